package plumbline.rules;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;

/** A waiver whose last day is over, while what it covered is still there. */
final class WaiverExpired implements WaiverRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "waiver-expired",
          Group.INPUT,
          Severity.UNVERIFIED,
          "the last day of a waiver is over, and what it covered is still there",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(WaiverCase waiver, Outcomes outcomes) {
    if (waiver.fits().isEmpty()) {
      return;
    }
    if (!waiver.isExpired()) {
      outcomes.conforms(waiver.subject());
      return;
    }
    long days = ChronoUnit.DAYS.between(waiver.until(), waiver.today());
    outcomes.add(
        Candidate.of(
            waiver.subject(),
            "accepted until " + waiver.until(),
            "the waiver ended " + Words.count((int) days, "day") + " ago",
            "What it covered counts again, and nobody has said whether it is still accepted: "
                + Words.list(waiver.fits())
                + ".",
            List.of(),
            Optional.of(waiver.at())));
  }
}
