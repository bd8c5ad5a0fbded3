package plumbline.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import plumbline.audit.AuditOutcome;
import plumbline.audit.RuleCaseRun;
import plumbline.finding.Finding;

/**
 * Walks the catalogue: every rule has its class, its page with the same headings in the same order,
 * and cases that run through the whole program; the examples of the page are the first drift case.
 */
class RuleKitTest {
  private static final Path PAGES = Path.of("docs/rules");
  private static final Path CASES = Path.of("testdata/rules");
  private static final boolean RENEW = Boolean.getBoolean("golden.renew");

  private static final List<String> HEADINGS =
      List.of(
          "What is reported",
          "Why it matters",
          "Source",
          "Config",
          "Design",
          "Report",
          "How to repair",
          "How to accept");

  @Test
  void the_catalogue_is_sorted_and_each_id_is_there_once() {
    List<String> ids = RuleCatalogue.ALL.stream().map(rule -> rule.info().id()).toList();
    assertThat(ids).isSorted().doesNotHaveDuplicates();
    assertThat(RuleCatalogue.names()).isSorted().doesNotHaveDuplicates().containsAll(ids);
  }

  @Test
  void every_rule_is_a_final_class_named_after_its_id_without_state() {
    for (Rule rule : RuleCatalogue.ALL) {
      String name =
          Stream.of(rule.info().id().split("-"))
              .map(
                  word ->
                      word.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + word.substring(1))
              .collect(Collectors.joining());
      assertThat(rule.getClass().getSimpleName()).isEqualTo(name);
      assertThat(java.lang.reflect.Modifier.isFinal(rule.getClass().getModifiers())).isTrue();
      assertThat(rule.getClass().getDeclaredFields())
          .allMatch(field -> java.lang.reflect.Modifier.isStatic(field.getModifiers()));
      assertThat(rule.info().summary()).doesNotEndWith(".").hasSizeLessThan(100);
    }
  }

  @Test
  void there_is_no_page_and_no_case_without_a_rule() throws IOException {
    List<String> ids = RuleCatalogue.ALL.stream().map(rule -> rule.info().id()).toList();
    assertThat(names(CASES)).isEqualTo(ids);
    assertThat(names(PAGES)).isEqualTo(ids.stream().map(id -> id + ".md").sorted().toList());
  }

  @TestFactory
  Stream<DynamicTest> every_page_has_its_headings_and_shows_its_first_drift_case() {
    return RuleCatalogue.ALL.stream()
        .map(rule -> DynamicTest.dynamicTest(rule.info().id(), () -> page(rule.info().id())));
  }

  @TestFactory
  Stream<DynamicTest> every_case_gives_exactly_what_it_expects() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Rule rule : RuleCatalogue.ALL) {
      String id = rule.info().id();
      List<String> cases = names(CASES.resolve(id));
      assertThat(cases).as(id).contains("drift-1", "clean-1");
      assertThat(cases).as(id).allMatch(name -> name.matches("(drift|clean)-[0-9]"));
      for (String name : cases) {
        Path folder = CASES.resolve(id).resolve(name);
        tests.add(
            DynamicTest.dynamicTest(
                id + " " + name,
                name.startsWith("drift") ? () -> drift(rule, folder) : () -> clean(rule, folder)));
      }
    }
    return tests.stream();
  }

  private static void drift(Rule rule, Path folder) throws IOException {
    AuditOutcome outcome = RuleCaseRun.run(folder);
    assertThat(outcome.ruleFailures()).isEmpty();
    assertThat(outcome.findings()).extracting(Finding::rule).contains(rule.info().id());
    String text = RuleCaseRun.print(outcome.findings());
    Path expected = folder.resolve("expected.txt");
    if (RENEW) {
      Files.writeString(expected, text);
    }
    assertThat(text).isEqualTo(Files.readString(expected));
  }

  private static void clean(Rule rule, Path folder) throws IOException {
    AuditOutcome outcome = RuleCaseRun.run(folder);
    assertThat(outcome.ruleFailures()).isEmpty();
    assertThat(RuleCaseRun.print(outcome.findings())).isEmpty();
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals(rule.info().id()))
        .as("a clean case must ask the rule")
        .allMatch(count -> count.conforms() > 0)
        .hasSize(1);
  }

  private static void page(String id) throws IOException {
    String page = Files.readString(PAGES.resolve(id + ".md"));
    assertThat(page).startsWith("# " + id + "\n\n## " + HEADINGS.get(0) + "\n");
    List<String> headings =
        page.lines().filter(line -> line.startsWith("## ")).map(line -> line.substring(3)).toList();
    assertThat(headings).isEqualTo(HEADINGS);
    try (var shipped = RuleCatalogue.class.getResourceAsStream("pages/" + id + ".md")) {
      assertThat(shipped).as("page of %s as a resource", id).isNotNull();
      assertThat(new String(shipped.readAllBytes(), StandardCharsets.UTF_8)).isEqualTo(page);
    }
    Path example = CASES.resolve(id).resolve("drift-1");
    List<String> configs = new ArrayList<>();
    for (String name : names(example)) {
      Path file = example.resolve(name);
      if (RuleCaseRun.isConfig(file) && Files.size(file) > 0) {
        configs.add(Files.readString(file));
      }
    }
    assertThat(blocks(page, "Config")).isEqualTo(configs.stream().map(RuleKitTest::ended).toList());
    List<String> meant = new ArrayList<>();
    meant.add(Files.readString(example.resolve("design.yaml")));
    if (Files.exists(example.resolve("waivers.yaml"))) {
      meant.add(Files.readString(example.resolve("waivers.yaml")));
    }
    assertThat(blocks(page, "Design")).isEqualTo(meant);
    assertThat(blocks(page, "Report"))
        .containsExactly(Files.readString(example.resolve("expected.txt")));
  }

  private static String ended(String text) {
    return text.endsWith("\n") ? text : text + "\n";
  }

  private static List<String> blocks(String page, String heading) {
    String section = page.substring(page.indexOf("\n## " + heading + "\n") + 1);
    int next = section.indexOf("\n## ");
    Matcher block =
        Pattern.compile("(?ms)^```[a-z]+\n(.*?)^```$")
            .matcher(next < 0 ? section : section.substring(0, next));
    return block.results().map(found -> found.group(1)).toList();
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .sorted(Comparator.naturalOrder())
          .toList();
    }
  }
}
