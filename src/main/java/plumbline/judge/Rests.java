package plumbline.judge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.finding.Proof;
import plumbline.rules.Outcome;
import plumbline.rules.Outcome.Candidate;
import plumbline.rules.Outcome.Undecided;

/**
 * Takes away, on one port or one switch, what goes away by itself when another finding there is
 * repaired: what follows from it shows all the lines that it rests on, and more. Its consequence is
 * told with the cause's.
 */
final class Rests {
  /** By the rule of the cause, the rules of what may rest on it. */
  private static final Map<String, Set<String>> CARRIES =
      Map.of(
          "access-vlan-differs", Set.of("native-vlan-in-use"),
          "bpdu-filter-set", Set.of("bpdu-guard-missing"),
          "fast-start-missing", Set.of("bpdu-guard-missing"),
          "fast-start-without-effect", Set.of("bpdu-guard-missing"),
          "fast-start-on-switch-link", Set.of("guard-on-switch-link"),
          "spanning-tree-off", Set.of("spanning-tree-mode-differs"),
          "voice-vlan-differs", Set.of("native-vlan-in-use"));

  private Rests() {}

  /** What is left of what was said of one port, or of one switch as a whole. */
  static List<Spoken> merged(List<Spoken> port) {
    List<Spoken> left = new ArrayList<>();
    for (Spoken one : port) {
      if (port.stream().noneMatch(cause -> carries(cause, one))) {
        left.add(told(one, port));
      }
    }
    return left;
  }

  private static Spoken told(Spoken cause, List<Spoken> port) {
    Spoken told = cause;
    for (Spoken one : port) {
      if (carries(cause, one)
          && told.outcome() instanceof Candidate candidate
          && one.outcome() instanceof Candidate hidden) {
        told = new Spoken(cause.rule(), candidate.followedBy(hidden.consequence()));
      }
    }
    return told;
  }

  private static boolean carries(Spoken cause, Spoken other) {
    return CARRIES.getOrDefault(cause.rule().id(), Set.of()).contains(other.rule().id())
        && proofs(cause.outcome())
            .filter(lines -> !lines.isEmpty())
            .filter(
                lines ->
                    proofs(other.outcome())
                        .filter(rests -> new HashSet<>(rests).containsAll(lines))
                        .isPresent())
            .isPresent()
        && cause.outcome().getClass().equals(other.outcome().getClass());
  }

  private static Optional<List<Proof>> proofs(Outcome outcome) {
    if (outcome instanceof Candidate candidate) {
      return Optional.of(candidate.proofs());
    }
    // a gap of the text as a whole rests on no line: each rule tells it once
    return outcome instanceof Undecided open && open.cause() == Undecided.Cause.OWN
        ? Optional.of(open.proofs())
        : Optional.empty();
  }
}
