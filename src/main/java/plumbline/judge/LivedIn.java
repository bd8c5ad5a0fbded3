package plumbline.judge;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.rules.Outcome.Candidate;

/**
 * Takes away, on one port, that something lives in a VLAN which is to stay empty, where the same
 * line already has a finding as the wrong VLAN of the port: its consequence is told there.
 */
final class LivedIn {
  private static final Set<String> WRONG_VLAN = Set.of("access-vlan-differs", "voice-vlan-differs");
  private static final String IN_USE = "native-vlan-in-use";

  private LivedIn() {}

  /** What is left of what was said of one port. */
  static List<Spoken> merged(List<Spoken> port) {
    List<Spoken> left = new ArrayList<>(port);
    for (Spoken one : port) {
      cause(one, left)
          .ifPresent(
              cause -> {
                left.remove(one);
                left.set(
                    left.indexOf(cause),
                    new Spoken(
                        cause.rule(),
                        ((Candidate) cause.outcome())
                            .followedBy(((Candidate) one.outcome()).consequence())));
              });
    }
    return left;
  }

  private static Optional<Spoken> cause(Spoken hidden, List<Spoken> port) {
    if (!hidden.rule().id().equals(IN_USE) || !(hidden.outcome() instanceof Candidate lives)) {
      return Optional.empty();
    }
    return port.stream()
        .filter(one -> WRONG_VLAN.contains(one.rule().id()))
        .filter(
            one ->
                one.outcome() instanceof Candidate wrong
                    && new HashSet<>(lives.proofs()).containsAll(wrong.proofs()))
        .findFirst();
  }
}
