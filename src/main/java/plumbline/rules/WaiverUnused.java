package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.rules.Outcome.Undecided.Cause;

/** A waiver that covers no finding. */
final class WaiverUnused implements WaiverRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "waiver-unused",
          Group.INPUT,
          Severity.UNTIDY,
          "a waiver covers no finding of the run",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(WaiverCase waiver, Outcomes outcomes) {
    if (!waiver.fits().isEmpty()) {
      outcomes.conforms(waiver.subject());
    } else if (waiver.decided()) {
      outcomes.add(
          Candidate.of(
              waiver.subject(),
              "accepted until " + waiver.until(),
              "the waiver covers nothing: " + waiver.why(),
              "Should the difference come back before the waiver ends, it is covered without anybody"
                  + " having looked at it.",
              List.of(),
              Optional.of(waiver.at())));
    } else {
      outcomes.add(
          Undecided.of(
              waiver.subject(),
              Cause.TEXT,
              "not all that it may be for was checked",
              "a finding that it covers",
              List.of(),
              Optional.of(waiver.at())));
    }
  }
}
