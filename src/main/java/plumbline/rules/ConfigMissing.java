package plumbline.rules;

import java.util.List;
import java.util.Optional;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;

/** A switch of the design that the run has no config of. */
final class ConfigMissing implements InputRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "config-missing",
          Group.INPUT,
          Severity.UNVERIFIED,
          "there is no config of a switch of the design",
          "NIST SP 800-53 CM-2; common practice");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(InputCase input, Outcomes outcomes) {
    if (input instanceof InputCase.Read read && read.designed().isPresent()) {
      outcomes.conforms(read.subject());
    } else if (input instanceof InputCase.Missing missing) {
      int ports = missing.design().portsOf(missing.designed().name()).size();
      outcomes.add(
          Candidate.of(
              Subject.ofSwitch(missing.designed().name()),
              "a config with hostname " + missing.designed().hostname(),
              "no such config was given",
              "Nothing is known of this switch: "
                  + Words.count(ports, "port")
                  + " of the design "
                  + Words.are(ports)
                  + " not audited.",
              List.of(),
              Optional.of(missing.designed().at())));
    }
  }
}
