package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.result.Result.RuleCount;

/**
 * What the times in a header tell of a save and of the age of a text; the run is on 25 November
 * 2026, 02:10 UTC (zones lie between UTC-12 and UTC+14: common practice, no source).
 */
class HeaderTimesAuditTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}}
      switches: {sw1: {}}
      max-age-days: 8
      """;
  private static final String CHANGED = "! Last configuration change at ";
  private static final String SAVED = "! NVRAM config last updated at ";

  private static AuditOutcome run(String head) {
    AuditOutcome outcome =
        RuleCaseRun.run(DESIGN, head + "hostname sw1\n!\nvtp mode transparent\n!\nend\n");
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static String said(AuditOutcome outcome, String rule) {
    List<Finding> found =
        outcome.findings().stream().filter(one -> one.rule().equals(rule)).toList();
    RuleCount count =
        outcome.checks().stream().filter(one -> one.rule().equals(rule)).findFirst().orElseThrow();
    if (!found.isEmpty()) {
      return found.get(0).severity() + ": " + found.get(0).found();
    }
    return count.conforms() > 0 ? "conforms" : "not asked";
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          "01:00:00 UTC Wed Nov 25 2026 by ops", "01:00:00 UTC Wed Nov 25 2026", "conforms"
          "01:00:01 UTC Wed Nov 25 2026 by ops", "01:00:00 UTC Wed Nov 25 2026 by ops", "weakens: changed 2026-11-25 01:00:01 UTC, last saved 2026-11-25 01:00:00 UTC"
          "01:30:00 CET Sun Oct 25 2026", "02:45:00 CEST Sun Oct 25 2026", "unverified: cannot be told: the two times are of different zones and too close to each other to compare"
          "01:30:00 CET Thu Oct 29 2026", "02:45:00 CEST Sat Oct 24 2026", "weakens: changed 2026-10-29 01:30:00 CET, last saved 2026-10-24 02:45:00 CEST"
          "01:30:00 CET Thu Oct 22 2026", "02:45:00 CEST Sat Oct 24 2026", "conforms"
          "some time", "02:45:00 CEST Sat Oct 24 2026", "unverified: cannot be told: a time in the header cannot be read"
          "*00:02:45 UTC Mon Mar 1 1993", "00:02:40 UTC Mon Mar 1 1993", "unverified: cannot be told: a time in the header cannot be read"
          """)
  void a_change_later_than_the_last_save_is_found(String changed, String saved, String expected) {
    assertThat(said(run(CHANGED + changed + "\n" + SAVED + saved + "\n!\n"), "change-not-saved"))
        .isEqualTo(expected);
  }

  @Test
  void one_time_alone_tells_nothing_of_a_save() {
    assertThat(said(run(CHANGED + "01:00:00 UTC Wed Nov 25 2026\n!\n"), "change-not-saved"))
        .isEqualTo("not asked");
    assertThat(said(run(""), "change-not-saved")).isEqualTo("not asked");
  }

  @Test
  void nobody_is_named_in_the_evidence() {
    AuditOutcome outcome =
        run(
            CHANGED
                + "02:00:00 UTC Wed Nov 25 2026 by somebody\n"
                + SAVED
                + "01:00:00 UTC Wed Nov 25 2026 by somebody\n!\n");
    assertThat(RuleCaseRun.print(outcome.findings()))
        .contains("sw1.cfg:1: ! Last configuration change at 02:00:00 UTC Wed Nov 25 2026\n")
        .doesNotContain("somebody");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          "!Time: Tue Nov 24 10:11:12 2026", "conforms"
          "!Time: Tue Nov 3 10:11:12 2026", "unverified: taken 2026-11-03 10:11:12, more than 21 days before this run"
          "!Time: Tue Nov 17 02:11:00 2026", "unverified: cannot be told: the zone of its time is not known, and the age depends on it"
          "!Time: 02:11:00 UTC Tue Nov 17 2026", "conforms"
          "!Time: 02:09:00 UTC Tue Nov 17 2026", "unverified: taken 2026-11-17 02:09:00 UTC, more than 8 days before this run"
          "!Time: Wed Nov 25 15:00:00 2026", "conforms"
          "!Time: Mon Nov 30 15:00:00 2026", "unverified: cannot be told: the header says 2026-11-30 15:00:00, after the time of this run: one of the two clocks is wrong"
          "!Time: Tue Nov 31 10:11:12 2026", "unverified: cannot be told: the time in the header cannot be read"
          "! Last configuration change at 10:11:12 UTC Tue Nov 3 2026", "not asked"
          "! Last configuration change at 10:11:12 UTC Tue Nov 24 2026", "conforms"
          "!", "not asked"
          """)
  void the_age_of_a_text_is_told_by_the_time_at_which_it_was_taken(String head, String expected) {
    assertThat(said(run(head + "\n"), "config-stale")).isEqualTo(expected);
  }

  @Test
  void a_design_without_an_age_asks_for_none() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN.replace("max-age-days: 8\n", ""),
            "!Time: Tue Nov 3 10:11:12 2026\nhostname sw1\n!\nvtp mode transparent\n!\nend\n");
    assertThat(said(outcome, "config-stale")).isEqualTo("not asked");
  }
}
