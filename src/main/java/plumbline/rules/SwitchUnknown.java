package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.effective.SwitchSettings;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;

/** A config of no switch of the design, or a text that is no config. */
final class SwitchUnknown implements InputRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "switch-unknown",
          Group.INPUT,
          Severity.UNVERIFIED,
          "a config is of no switch of the design, or a text is no config",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(InputCase input, Outcomes outcomes) {
    if (!(input instanceof InputCase.Read read)) {
      return;
    }
    if (!read.isConfig()) {
      outcomes.add(
          Candidate.of(
              read.subject(),
              "a config",
              "a text without one statement about a switch",
              "Nothing is known of a switch from this text.",
              evidence(read.settings()),
              read.designed().map(designed -> designed.at())));
    } else if (read.designed().isEmpty()) {
      List<String> names =
          read.design().switches().values().stream().map(known -> known.hostname()).toList();
      outcomes.add(
          Candidate.of(
              read.subject(),
              "a switch of the design, such as " + Words.list(names),
              "a config of " + read.name(),
              "The config was read and is not audited, for the design has no switch of this name.",
              evidence(read.settings()),
              Optional.empty()));
    } else {
      outcomes.conforms(read.subject());
    }
  }

  private static List<Proof> evidence(SwitchSettings settings) {
    List<Proof> proofs = new ArrayList<>();
    settings.hostname().evidence().stream()
        .filter(Evidence.Line.class::isInstance)
        .forEach(line -> proofs.add(Proof.of(settings.file(), line)));
    if (proofs.isEmpty()) {
      proofs.add(
          new Proof(
              Optional.of(settings.file()),
              new Evidence.Default("no hostname line: the file's name stands for the switch")));
    }
    return proofs;
  }
}
