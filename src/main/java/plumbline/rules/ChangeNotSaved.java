package plumbline.rules;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.statement.SwitchText.Stamp;

/** A running config that is newer than the saved one. */
final class ChangeNotSaved implements SwitchRule {
  private static final String DESIGNED = "every change saved";

  /** Clocks of two zones are at most so far apart: UTC-12 to UTC+14. */
  private static final Duration ZONES = Duration.ofHours(26);

  private static final RuleInfo INFO =
      new RuleInfo(
          "change-not-saved",
          Group.SWITCH,
          Severity.WEAKENS,
          "the config was changed after it was last saved",
          RuleInfo.COMMON_PRACTICE);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(SwitchCase device, Outcomes outcomes) {
    Optional<Stamp> changed = device.settings().times().changed();
    Optional<Stamp> saved = device.settings().times().saved();
    if (changed.isEmpty() || saved.isEmpty()) {
      return;
    }
    List<Proof> proofs = device.proofs(List.of(changed.get().line(), saved.get().line()));
    if (changed.get().time().isEmpty() || saved.get().time().isEmpty()) {
      outcomes.add(undecided(device, "a time in the header cannot be read", proofs));
      return;
    }
    LocalDateTime change = changed.get().time().get();
    LocalDateTime save = saved.get().time().get();
    // summer and winter time give one header two zones
    Duration doubt = changed.get().zone().equals(saved.get().zone()) ? Duration.ZERO : ZONES;
    if (change.minus(doubt).isAfter(save)) {
      outcomes.add(
          Candidate.of(
              device.subject(),
              DESIGNED,
              "changed " + Words.time(changed.get()) + ", last saved " + Words.time(saved.get()),
              "What was changed since the last save is lost at the next reload or power cut.",
              proofs,
              Optional.of(device.designed().at())));
    } else if (change.plus(doubt).isAfter(save)) {
      outcomes.add(
          undecided(
              device,
              "the two times are of different zones and too close to each other to compare",
              proofs));
    } else {
      outcomes.conforms(device.subject());
    }
  }

  private static Undecided undecided(SwitchCase device, String why, List<Proof> proofs) {
    return Undecided.of(
        device.subject(),
        Undecided.Cause.OWN,
        why,
        DESIGNED,
        proofs,
        Optional.of(device.designed().at()));
  }
}
