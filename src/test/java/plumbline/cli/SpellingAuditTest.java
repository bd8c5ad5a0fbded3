package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/**
 * Audits one switch in every spelling of its config: the findings must be the same, for no line
 * means anything else (that keywords may be cut to a unique prefix, and how terminals save text, is
 * common practice, no source).
 */
class SpellingAuditTest {
  private static final Path HOME = Path.of("testdata/spelling");
  private static final StatementParser PARSER = new StatementParser();

  /** What makes the design differ from the switch in every rule about ports and VLANs. */
  private static final Map<String, String> CHANGES =
      Map.of(
          "lights-out: {id: 210}", "lights-out: {id: 211}",
          "native: parked, tagged: [hypervisor, voice-a], fast",
              "native: office, tagged: [lights-out], fast",
          "desk-phone: {mode: access, access: office, voice: voice-a",
              "desk-phone: {mode: trunk, native: office, tagged: [voice-a]",
          "Gi1/0/9-10: spare", "Gi1/0/9-10: controller-port, Gi1/0/40: desk-phone");

  @TempDir private Path folder;

  @Test
  void every_spelling_of_a_config_has_the_same_findings() throws IOException {
    String asMeant = Files.readString(HOME.resolve("design.yaml"));
    String changed = asMeant;
    for (Map.Entry<String, String> change : CHANGES.entrySet()) {
      assertThat(changed).contains(change.getKey());
      changed = changed.replace(change.getKey(), change.getValue());
    }
    List<String> findings = findings(changed, bytes(spelled("full.cfg")));
    assertThat(findings).hasSizeGreaterThan(8).doesNotHaveDuplicates();
    assertThat(findings.stream().map(one -> one.split("[ /]", -1)[1]).distinct())
        .hasSizeGreaterThan(4);
    List<String> asDesigned = findings(asMeant, bytes(spelled("full.cfg")));
    for (Map.Entry<String, byte[]> spelling : spellings().entrySet()) {
      assertThat(findings(changed, spelling.getValue())).as(spelling.getKey()).isEqualTo(findings);
      assertThat(findings(asMeant, spelling.getValue()))
          .as(spelling.getKey())
          .isEqualTo(asDesigned);
    }
  }

  @Test
  void the_shortest_prefixes_are_short() throws IOException {
    assertThat(shortest(spelled("full.cfg")).lines().map(String::strip))
        .anyMatch(line -> line.matches("sw\\w* m\\w* t\\w*") && line.length() < 12)
        .noneMatch(line -> line.contains("switchport trunk"));
  }

  private static Map<String, byte[]> spellings() throws IOException {
    Map<String, byte[]> spellings = new LinkedHashMap<>();
    for (String name : List.of("full.cfg", "abbreviated.cfg", "ranges.cfg")) {
      add(spellings, name, spelled(name));
    }
    add(spellings, "shortest prefixes", shortest(spelled("full.cfg")));
    return spellings;
  }

  private static void add(Map<String, byte[]> spellings, String name, String text) {
    spellings.put(name, bytes(text));
    spellings.put(name + ", CRLF", bytes(text.replace("\n", "\r\n")));
    spellings.put(name + ", CR", bytes(text.replace("\n", "\r")));
    spellings.put(name + ", tabs", bytes(text.replace("\n ", "\n\t").replace(' ', '\t')));
    spellings.put(name + ", two blanks", bytes(text.replace("\n ", "\n  ")));
    spellings.put(name + ", byte-order mark", bytes("\uFEFF" + text));
    spellings.put(name + ", upper case", bytes(shouted(text)));
    spellings.put(
        name + ", no indentation",
        bytes(text.lines().map(String::strip).collect(Collectors.joining("\n", "", "\n"))));
    spellings.put(name + ", pager marks", bytes(paged(text)));
    String described = text.replaceFirst("(?m)^end$", "! F\u00e4hre\nend");
    assertThat(described).isNotEqualTo(text);
    spellings.put(name + ", Latin-1", described.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static String spelled(String name) throws IOException {
    return Files.readString(HOME.resolve(name));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** The keywords of switching lines in capitals; names keep their case. */
  private static String shouted(String text) {
    return text.lines()
        .map(
            line ->
                line.strip().startsWith("switchport") || line.strip().startsWith("spanning-tree")
                    ? line.toUpperCase(java.util.Locale.ROOT)
                    : line)
        .collect(Collectors.joining("\n", "", "\n"));
  }

  /** A pager mark that a terminal wiped out again, before every tenth line. */
  private static String paged(String text) {
    StringBuilder paged = new StringBuilder();
    int line = 0;
    for (String one : text.lines().toList()) {
      if (++line % 10 == 0) {
        paged.append(" --More-- ").append("\b".repeat(10)).append(" ".repeat(10));
        paged.append("\b".repeat(10));
      }
      paged.append(one).append('\n');
    }
    return paged.toString();
  }

  /** Every word of every statement cut as far as the statement still means the same. */
  private static String shortest(String text) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    for (Statement statement :
        new ConfigReader(PARSER).read("full.cfg", "full", text).get(0).statements()) {
      if (!Set.of(Context.TOP, Context.PORT, Context.VLAN).contains(statement.context())) {
        continue;
      }
      String line = lines.get(statement.line() - 1);
      String indent = line.substring(0, line.length() - line.stripLeading().length());
      lines.set(statement.line() - 1, indent + shortest(statement.context(), line.strip()));
    }
    return String.join("\n", lines) + "\n";
  }

  private static String shortest(Context context, String statement) {
    Meaning meaning = PARSER.read(context, statement);
    List<String> words = new ArrayList<>(List.of(statement.split(" ", -1)));
    for (int i = 0; i < words.size(); i++) {
      for (int length = 1; length < words.get(i).length(); length++) {
        List<String> cut = new ArrayList<>(words);
        cut.set(i, words.get(i).substring(0, length));
        Meaning same = PARSER.read(context, String.join(" ", cut));
        if (same.command().equals(meaning.command()) && same.form() == meaning.form()) {
          words = cut;
          break;
        }
      }
    }
    return String.join(" ", words);
  }

  /** Severity, id and what was found, of every finding. */
  private List<String> findings(String design, byte[] config) throws IOException {
    Path designed = Files.writeString(folder.resolve("design.yaml"), design);
    Path file = Files.write(folder.resolve("switch.cfg"), config);
    Path report = folder.resolve("report.json");
    Run run = Run.of("audit", designed.toString(), file.toString(), "--report", report.toString());
    assertThat(run.err()).isEmpty();
    List<String> findings = new ArrayList<>();
    try (JsonParser json = new JsonFactory().createParser(Files.readString(report))) {
      Map<String, String> fields = new LinkedHashMap<>();
      for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
        if (token == JsonToken.VALUE_STRING && json.currentName() != null) {
          fields.put(json.currentName(), json.getText());
          if (json.currentName().equals("found")) {
            findings.add(
                fields.get("severity") + " " + fields.get("id") + " " + fields.get("found"));
          }
        }
      }
    }
    return findings;
  }
}
