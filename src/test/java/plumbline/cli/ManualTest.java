package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

class ManualTest {
  private static final Pattern ITEM = Pattern.compile("(?m)^- (?<names>`-[^:]*):");
  private static final Pattern NAME =
      Pattern.compile("`(?<name>--?[A-Za-z-]+)(?: (?<label>[A-Z]+))?`");

  @Test
  void the_manual_describes_every_command_and_no_other() throws IOException {
    assertThat(sections().keySet())
        .filteredOn(title -> title.startsWith("plumbline "))
        .containsExactlyInAnyOrderElementsOf(
            commands().keySet().stream().map(name -> "plumbline " + name).toList());
  }

  @Test
  void the_manual_describes_every_option_and_no_other() throws IOException {
    Map<String, String> sections = sections();
    Set<String> common = options(sections.get(""));
    assertThat(common).containsExactly("--help", "--version", "-V", "-h");
    for (Map.Entry<String, CommandLine> command : commands().entrySet()) {
      Set<String> described = new TreeSet<>(common);
      described.addAll(options(sections.get("plumbline " + command.getKey())));
      Set<String> real = new TreeSet<>();
      for (OptionSpec option : command.getValue().getCommandSpec().options()) {
        Arrays.stream(option.names())
            .map(name -> option.arity().max() == 0 ? name : name + " " + option.paramLabel())
            .forEach(real::add);
      }
      assertThat(described).as(command.getKey()).isEqualTo(real);
    }
  }

  @Test
  void the_manual_has_the_statuses_of_the_help_text() throws IOException {
    Set<String> inManual = new TreeSet<>();
    Matcher rows = Pattern.compile("(?m)^\\| (\\d+) \\|").matcher(sections().get("Exit status"));
    while (rows.find()) {
      inManual.add(rows.group(1));
    }
    Set<String> inHelp = new TreeSet<>();
    Matcher lines = Pattern.compile("(?m)^  (\\d+) +").matcher(Run.of("--help").out());
    while (lines.find()) {
      inHelp.add(lines.group(1));
    }
    assertThat(inManual).isEqualTo(inHelp).containsExactly("0", "1", "2", "64", "70", "74");
  }

  private static Map<String, CommandLine> commands() {
    Console console =
        new Console(
            InputStream.nullInputStream(),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream(),
            false);
    return Main.commandLine(console, false).getSubcommands();
  }

  /** The manual by heading; what stands before the first one under an empty name. */
  private static Map<String, String> sections() throws IOException {
    Map<String, String> sections = new TreeMap<>();
    String manual = Files.readString(Path.of("docs/manual.md"));
    String[] parts = manual.split("(?m)^## ", -1);
    sections.put("", parts[0]);
    for (String part : Arrays.asList(parts).subList(1, parts.length)) {
      int end = part.indexOf('\n');
      sections.put(part.substring(0, end), part.substring(end));
    }
    return sections;
  }

  private static Set<String> options(String section) {
    Set<String> names = new TreeSet<>();
    Matcher items = ITEM.matcher(section);
    while (items.find()) {
      Matcher name = NAME.matcher(items.group("names"));
      while (name.find()) {
        String label = name.group("label");
        names.add(label == null ? name.group("name") : name.group("name") + " " + label);
      }
    }
    return names;
  }
}
