package plumbline.run;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import plumbline.audit.AuditOutcome;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.result.FollowUp;
import plumbline.result.Verdict;

/** What an audit comes to in one word. */
final class Verdicts {
  private Verdicts() {}

  /** The same of an audit that knows no waivers. */
  static Verdict of(AuditOutcome outcome, Severity failOn, boolean unaudited) {
    return of(
        new Following(outcome.findings(), 0, outcome.checks(), FollowUp.NONE),
        !outcome.ruleFailures().isEmpty(),
        failOn,
        unaudited);
  }

  /**
   * Drift where a finding reaches the severity asked for; else incomplete where anything is
   * unverified or was not audited, or where nothing at all was checked; else conforming.
   *
   * @param failed whether a rule failed with a bug
   * @param unaudited whether something that had to be audited was not, or not for all that bears on
   *     it
   */
  static Verdict of(Following run, boolean failed, Severity failOn, boolean unaudited) {
    List<Finding> findings = run.findings();
    Map<Severity, Integer> counts = new EnumMap<>(Severity.class);
    findings.forEach(finding -> counts.merge(finding.severity(), 1, Integer::sum));
    int unverified = counts.getOrDefault(Severity.UNVERIFIED, 0);
    int checked =
        run.checks().stream()
            .mapToInt(rule -> rule.conforms() + rule.differs() + rule.undecided())
            .sum();
    Verdict.Word word;
    if (findings.stream().anyMatch(finding -> finding.severity().reaches(failOn))) {
      word = Verdict.Word.DRIFT;
    } else if (unverified > 0 || unaudited || failed || checked == 0) {
      word = Verdict.Word.INCOMPLETE;
    } else {
      word = Verdict.Word.CONFORMS;
    }
    return new Verdict(
        word,
        counts.getOrDefault(Severity.BREAKS, 0),
        counts.getOrDefault(Severity.WEAKENS, 0),
        unverified,
        counts.getOrDefault(Severity.UNTIDY, 0),
        run.waived(),
        checked);
  }
}
