package plumbline.rules;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.design.Wanted;
import plumbline.finding.Proof;
import plumbline.finding.Severity;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;
import plumbline.statement.SwitchText.Stamp;
import plumbline.statement.SwitchText.Times;

/** A config that is too old to tell what the switch does now. */
final class ConfigStale implements InputRule {
  private static final RuleInfo INFO =
      new RuleInfo(
          "config-stale",
          Group.INPUT,
          Severity.UNVERIFIED,
          "a config is older than the design's max-age-days",
          "NIST SP 800-53, CM-6(d) (monitor changes to settings); common practice",
          Set.of("max-age-days"));

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void check(InputCase input, Outcomes outcomes) {
    Optional<Wanted<Integer>> wish = input.design().maxAgeDays();
    if (wish.isPresent() && input instanceof InputCase.Read read && read.isConfig()) {
      Times times = read.settings().times();
      if (times.taken().isPresent()) {
        taken(read, times.taken().get(), wish.get(), outcomes);
      } else if (ConfigAge.isTold(times, read.at(), wish.get().value())) {
        outcomes.conforms(read.subject());
      }
    }
  }

  private static void taken(
      InputCase.Read read, Stamp taken, Wanted<Integer> wish, Outcomes outcomes) {
    List<Proof> proofs = List.of(Proof.of(read.settings().file(), taken.line()));
    Instant limit = read.at().minus(Duration.ofDays(wish.value()));
    if (taken.time().isEmpty()) {
      outcomes.add(undecided(read, "the time in the header cannot be read", wish, proofs));
    } else if (ConfigAge.latest(taken).isBefore(limit)) {
      outcomes.add(
          Candidate.of(
              read.subject(),
              designed(wish),
              "taken "
                  + Words.time(taken)
                  + ", more than "
                  + age(taken, read.at())
                  + " before this run",
              "What was changed on the switch since then is not in this text: its other findings,"
                  + " and their absence, are of that day.",
              proofs,
              Optional.of(wish.at())));
    } else if (ConfigAge.earliest(taken).isAfter(read.at().plus(ConfigAge.DAY))) {
      outcomes.add(
          undecided(
              read,
              "the header says "
                  + Words.time(taken)
                  + ", after the time of this run: one of the two clocks is wrong",
              wish,
              proofs));
    } else if (ConfigAge.earliest(taken).isBefore(limit)) {
      outcomes.add(
          undecided(
              read, "the zone of its time is not known, and the age depends on it", wish, proofs));
    } else {
      outcomes.conforms(read.subject());
    }
  }

  /** The smallest age that the zone allows, in whole days. */
  private static String age(Stamp taken, Instant at) {
    return Words.count((int) Duration.between(ConfigAge.latest(taken), at).toDays(), "day");
  }

  private static String designed(Wanted<Integer> wish) {
    return "configs at most " + Words.count(wish.value(), "day") + " old";
  }

  private static Undecided undecided(
      InputCase.Read read, String why, Wanted<Integer> wish, List<Proof> proofs) {
    return Undecided.of(
        read.subject(), Undecided.Cause.OWN, why, designed(wish), proofs, Optional.of(wish.at()));
  }
}
