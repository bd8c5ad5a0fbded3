package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import plumbline.finding.Finding;
import plumbline.rules.RuleCatalogue;

/**
 * Pairs of causes at the same time give exactly the findings that section 6 of the product contract
 * names. The tables in {@code testdata/pairs} were written from the contract alone; what each cause
 * does to a port is common practice, no source.
 */
class CausePairsTest {
  private static final Path TABLES = Path.of("testdata", "pairs");
  private static final Path BASE = TABLES.resolve("base");

  @TempDir private Path scratch;

  private static Map<String, CauseTable.Row> causes() throws IOException {
    return CauseTable.causes(TABLES.resolve("causes.txt"));
  }

  private static Map<String, CauseTable.Row> pairs() throws IOException {
    return CauseTable.pairs(TABLES.resolve("pairs.txt"), causes());
  }

  @Test
  void the_site_without_a_cause_conforms() throws IOException {
    assertThat(texts(RuleCaseRun.run(BASE))).isEmpty();
  }

  @Test
  void the_table_has_at_least_sixty_pairs_and_every_cause_is_in_one() throws IOException {
    Set<String> paired = new TreeSet<>();
    pairs().keySet().forEach(pair -> paired.addAll(List.of(pair.split(", "))));
    assertThat(pairs()).hasSizeGreaterThanOrEqualTo(60);
    assertThat(causes().keySet()).allMatch(paired::contains);
  }

  @TestFactory
  Stream<DynamicTest> each_cause_alone_is_one_finding() throws IOException {
    assertThat(causes().values()).allMatch(row -> row.expected().size() == 1);
    return tests(causes());
  }

  @TestFactory
  Stream<DynamicTest> two_causes_give_what_the_contract_names() throws IOException {
    return tests(pairs());
  }

  private Stream<DynamicTest> tests(Map<String, CauseTable.Row> rows) {
    return rows.values().stream().map(row -> DynamicTest.dynamicTest(row.name(), () -> check(row)));
  }

  private void check(CauseTable.Row row) throws IOException {
    Path site = site(row);
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    assertThat(texts(outcome))
        .as(row.name())
        .containsExactlyInAnyOrderElementsOf(
            row.expected().stream().map(CauseTable.Expected::text).toList());
    assertThat(Told.untold(site)).as(row.name()).isEmpty();
    for (CauseTable.Expected expected : row.expected()) {
      Finding finding =
          outcome.findings().stream()
              .filter(one -> text(one).equals(expected.text()))
              .findFirst()
              .orElseThrow();
      expected
          .words()
          .forEach(
              words -> assertThat(finding.consequence()).as(row.name()).contains(meant(words)));
    }
  }

  /** A rule in brackets stands for its summary. */
  private static String meant(String words) {
    return RuleCatalogue.ALL.stream()
        .filter(rule -> words.equals("[" + rule.info().id() + "]"))
        .map(rule -> rule.info().summary())
        .findFirst()
        .orElse(words);
  }

  private Path site(CauseTable.Row row) throws IOException {
    Map<String, List<String>> files = new TreeMap<>();
    try (Stream<Path> base = Files.list(BASE)) {
      for (Path file : base.toList()) {
        files.put(file.getFileName().toString(), new ArrayList<>(Files.readAllLines(file)));
      }
    }
    // what cuts or empties a file comes last, so that the other cause finds its lines
    row.edits().stream()
        .sorted(Comparator.comparing(ConfigEdit::isOfFile))
        .forEach(edit -> edit.apply(files));
    Path site = Files.createDirectory(scratch.resolve(row.name()));
    for (Map.Entry<String, List<String>> file : files.entrySet()) {
      String end = file.getValue().isEmpty() ? "" : "\n";
      Files.writeString(site.resolve(file.getKey()), String.join("\n", file.getValue()) + end);
    }
    return site;
  }

  private static List<String> texts(AuditOutcome outcome) {
    return outcome.findings().stream().map(CausePairsTest::text).toList();
  }

  private static String text(Finding finding) {
    return finding.severity()
        + " "
        + finding.rule()
        + " "
        + finding.place().map(Object::toString).orElse("-");
  }
}
