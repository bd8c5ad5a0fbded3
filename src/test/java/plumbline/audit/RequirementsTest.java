package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import plumbline.finding.Finding;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;

/**
 * Holds {@code docs/requirements.md} against the published requirements: every one is there, the
 * rules named decide an example of it, and say so as their source.
 */
class RequirementsTest {
  private static final Path EXAMPLES = Path.of("testdata/requirements");
  private static final Pattern CODE = Pattern.compile("`(?<rule>[a-z-]+)`");

  /**
   * The items about VLANs, trunks and spanning tree of the US DoD Layer 2 Switch Security
   * Requirements Guide V3R4, 12 Feb 2026, read in public mirrors; two were seen without number.
   */
  private static final List<String> GUIDE =
      List.of(
          "V-206654",
          "V-206655",
          "V-206656",
          "V-206665",
          "V-206666",
          "V-206667",
          "V-206668",
          "V-206669",
          "V-206670",
          "V-206671",
          "V-206672",
          "rapid-spanning-tree",
          "unidirectional-link-detection");

  /**
   * Chapter 9 of the NSA Network Infrastructure Security Guide, PP-22-0293 (from memory), and
   * controls of NIST SP 800-53 Rev 5.1.1.
   */
  private static final List<String> OTHERS =
      List.of(
          "NSA 9.1",
          "NSA 9.2",
          "NSA 9.3",
          "NSA 9.4",
          "NSA 9.5",
          "NSA 9.6",
          "NIST CM-2",
          "NIST CM-2(3)",
          "NIST CM-3",
          "NIST CM-3(2)",
          "NIST CM-4",
          "NIST CM-6",
          "NIST CM-6(2)",
          "NIST SI-7");

  /** One row of a table: what it says instead of a rule, and its rules. */
  private record Row(String words, String rule, List<String> rules) {}

  @Test
  void every_published_requirement_has_its_row_and_the_guides_have_examples() throws IOException {
    assertThat(rows().keySet())
        .containsExactlyInAnyOrderElementsOf(
            Stream.concat(GUIDE.stream(), OTHERS.stream()).toList());
    try (Stream<Path> folders = Files.list(EXAMPLES)) {
      assertThat(folders.map(folder -> folder.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(GUIDE);
    }
  }

  @Test
  void every_row_names_rules_that_exist_or_says_in_a_sentence_why_none_can_decide_it()
      throws IOException {
    for (Map.Entry<String, Row> row : rows().entrySet()) {
      Row said = row.getValue();
      assertThat(RuleCatalogue.names()).as(row.getKey()).containsAll(said.rules());
      if (said.rules().isEmpty()) {
        assertThat(said.rule()).as(row.getKey()).isIn("none", "all");
        assertThat(GUIDE).doesNotContain(row.getKey());
        assertThat(said.words()).as(row.getKey()).endsWith(".");
      }
    }
  }

  @Test
  void every_rule_names_the_items_of_the_guide_that_it_decides_as_its_source() throws IOException {
    for (Map.Entry<String, Row> row : rows().entrySet()) {
      if (GUIDE.contains(row.getKey())) {
        for (Rule rule : built(row.getValue())) {
          assertThat(rule.info().source())
              .as("source of " + rule.info().id())
              .contains(token(row.getKey()));
        }
      }
    }
  }

  /** Items without a number are named by their subject. */
  private static String token(String id) {
    return id.startsWith("V-") ? id : id.replace('-', ' ');
  }

  @TestFactory
  Stream<DynamicTest> an_example_against_a_requirement_is_reported_and_one_after_it_is_not()
      throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map.Entry<String, Row> row : rows().entrySet()) {
      if (GUIDE.contains(row.getKey())) {
        Path example = EXAMPLES.resolve(row.getKey());
        tests.add(
            DynamicTest.dynamicTest(
                row.getKey() + " drift", () -> drift(example.resolve("drift"), row.getValue())));
        tests.add(
            DynamicTest.dynamicTest(
                row.getKey() + " silent", () -> silent(example.resolve("silent"), row.getValue())));
      }
    }
    return tests.stream();
  }

  private static void drift(Path example, Row row) throws IOException {
    Assumptions.assumeTrue(built(row).size() == row.rules().size());
    AuditOutcome outcome = RuleCaseRun.run(example);
    assertThat(outcome.ruleFailures()).isEmpty();
    assertThat(outcome.findings()).extracting(Finding::rule).containsAll(row.rules());
  }

  private static void silent(Path example, Row row) throws IOException {
    assertThat(Files.readString(example.resolve("design.yaml")))
        .startsWith("# Source: ")
        .isEqualTo(Files.readString(example.resolveSibling("drift").resolve("design.yaml")));
    AuditOutcome outcome = RuleCaseRun.run(example);
    assertThat(RuleCaseRun.print(outcome.findings())).isEmpty();
    for (Rule rule : built(row)) {
      assertThat(outcome.checks())
          .filteredOn(count -> count.rule().equals(rule.info().id()))
          .as("the example must ask the rule")
          .allMatch(count -> count.conforms() > 0 && count.undecided() == 0)
          .hasSize(1);
    }
  }

  private static List<Rule> built(Row row) {
    return RuleCatalogue.ALL.stream()
        .<Rule>map(rule -> rule)
        .filter(rule -> row.rules().contains(rule.info().id()))
        .toList();
  }

  private static Map<String, Row> rows() throws IOException {
    Map<String, Row> rows = new TreeMap<>();
    for (String line : Files.readString(Path.of("docs/requirements.md")).lines().toList()) {
      String[] cells = line.split("\\|", -1);
      if (cells.length != 6 || cells[1].isBlank() || line.startsWith("|---|")) {
        continue;
      }
      if (!cells[1].strip().equals("id")) {
        Matcher rule = CODE.matcher(cells[4]);
        List<String> rules = rule.results().map(one -> one.group(1)).toList();
        Row old = rows.put(cells[1].strip(), new Row(cells[3].strip(), cells[4].strip(), rules));
        assertThat(old).as(line).isNull();
      }
    }
    return rows;
  }
}
