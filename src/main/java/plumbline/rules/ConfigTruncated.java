package plumbline.rules;

import java.util.List;
import plumbline.design.DesignSwitch;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;
import plumbline.statement.SwitchText;

/** A config that stops before its end. */
final class ConfigTruncated implements InputRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "config-truncated",
          Group.INPUT,
          Severity.UNVERIFIED,
          "a config is cut short",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(InputCase input, Outcomes outcomes) {
    if (!(input instanceof InputCase.Read read) || !read.isConfig()) {
      return;
    }
    if (read.settings().truncation().isEmpty()) {
      outcomes.conforms(read.subject());
      return;
    }
    SwitchText.Truncation cut = read.settings().truncation().get();
    outcomes.add(
        Candidate.of(
            read.subject(),
            "the whole config",
            "in doubt from line " + cut.line() + " on: " + cut.why(),
            "What the text says before that line is judged; the rest, and everything absent, is"
                + " left open.",
            List.of(Proof.of(read.settings().file(), new Evidence.Line(cut.line(), ""))),
            read.designed().map(DesignSwitch::at)));
  }
}
