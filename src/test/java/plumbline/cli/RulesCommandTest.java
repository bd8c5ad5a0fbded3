package plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
    assertThat(run.out()).contains("mode-differs\n    port, at least breaks: ");
  }

  @Test
  void the_page_of_every_rule_is_printed_as_it_is_written() throws Exception {
    for (Rule rule : RuleCatalogue.ALL) {
      Run run = Run.of("rules", rule.info().id());
      assertThat(run.status()).as(rule.info().id()).isZero();
      assertThat(run.out())
          .isEqualTo(
              java.nio.file.Files.readString(
                  java.nio.file.Path.of("docs/rules", rule.info().id() + ".md")));
    }
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
