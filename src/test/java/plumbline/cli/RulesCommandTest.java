package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import plumbline.rules.Rule;
import plumbline.rules.RuleCatalogue;

class RulesCommandTest {
  @Test
  void every_rule_is_listed_within_eighty_columns() {
    Run run = Run.of("rules");
    assertThat(run.status()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    for (Rule rule : RuleCatalogue.ALL) {
      assertThat(run.out().lines()).contains(rule.info().id());
    }
    assertThat(run.out()).contains("mode-differs\n    port, at least weakens: ");
  }

  @Test
  void the_page_of_every_rule_is_printed_with_all_its_words() throws IOException {
    for (Rule rule : RuleCatalogue.ALL) {
      Run run = Run.of("rules", rule.info().id());
      assertThat(run.status()).as(rule.info().id()).isZero();
      String written = Files.readString(Path.of("docs/rules", rule.info().id() + ".md"));
      assertThat(run.out().split("\\s+")).isEqualTo(written.split("\\s+"));
      assertThat(blocks(run.out())).isEqualTo(blocks(written)).isNotEmpty();
    }
  }

  @Test
  void prose_of_a_page_fits_a_terminal() {
    for (Rule rule : RuleCatalogue.ALL) {
      String page = Run.of("rules", rule.info().id()).out();
      assertThat(page.replaceAll("(?ms)^```.*?^```$", "").lines())
          .as(rule.info().id())
          .allMatch(line -> line.length() <= 80);
    }
  }

  private static List<String> blocks(String page) {
    return Pattern.compile("(?ms)^```.*?^```$")
        .matcher(page)
        .results()
        .map(MatchResult::group)
        .toList();
  }

  @Test
  void the_beginning_of_several_ids_lists_them() {
    assertThat(Run.of("rules", "fast-start").err())
        .startsWith(
            "plumbline: unknown rule \"fast-start\"; these begin so: \"fast-start-missing\","
                + " \"fast-start-on-switch-link\" or \"fast-start-without-effect\"\n");
  }

  @Test
  void a_wrong_id_gets_the_nearest_one() {
    Run run = Run.of("rules", "mode-difers");
    assertThat(run.status()).isEqualTo(64);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .isEqualTo(
            """
            plumbline: unknown rule "mode-difers"; did you mean "mode-differs"?
            plumbline: see plumbline rules --help
            """);
  }
}
