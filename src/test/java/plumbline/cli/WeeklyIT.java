package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/weekly.md shows is what runs, step by step in one folder. */
class WeeklyIT {
  private static final Path PAGE = Path.of("docs/weekly.md");

  /** A block of commands, each behind a dollar sign, with what they print. */
  private static final Pattern BLOCK =
      Pattern.compile("(?ms)^<!-- transcript -->\n```console\n(?<shown>.*?)^```$");

  private static final Pattern COMMAND =
      Pattern.compile("(?m)^\\$ (?<command>[^\n]*\n(?:> [^\n]*\n|>\n)*)");

  @TempDir private Path folder;

  @Test
  void its_transcripts_are_what_the_program_prints() throws IOException, InterruptedException {
    String page = Files.readString(PAGE);
    String expected = page;
    List<String> blocks = new ArrayList<>();
    Matcher block = BLOCK.matcher(page);
    while (block.find()) {
      String real = run(block.group("shown"));
      expected = expected.replace(block.group("shown"), real);
      blocks.add(real);
    }
    assertThat(blocks).hasSizeGreaterThan(3);
    if (Boolean.getBoolean("golden.renew")) {
      Files.writeString(PAGE, expected);
    }
    assertThat(Files.readString(PAGE)).isEqualTo(expected);
  }

  private String run(String shown) throws IOException, InterruptedException {
    StringBuilder real = new StringBuilder();
    Matcher command = COMMAND.matcher(shown);
    while (command.find()) {
      Launched run =
          Launched.in(
              folder,
              List.of(
                  "sh",
                  "-c",
                  "PATH="
                      + Launched.PROGRAM.getParent()
                      + ":$PATH; "
                      + command.group("command").replaceAll("(?m)^> ?", "")));
      real.append(command.group()).append(run.out()).append(run.err());
    }
    return real.toString();
  }

  @Test
  void its_units_and_jobs_use_options_that_the_program_has() throws IOException {
    String help = Run.of("audit", "--help").out();
    Matcher option = Pattern.compile("(?<= )--[a-z-]+").matcher(Files.readString(PAGE));
    while (option.find()) {
      assertThat(
              List.of("--quiet", "--failed", "--message").contains(option.group())
                  || help.contains(option.group()))
          .as(option.group())
          .isTrue();
    }
  }
}
