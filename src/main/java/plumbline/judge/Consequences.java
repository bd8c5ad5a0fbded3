package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.port.PortName;
import plumbline.rules.Outcome.Candidate;

/**
 * Lists what is a mere consequence of another finding in that finding. A consequence whose cause
 * nobody reports stays a finding of its own.
 */
final class Consequences {
  /** The rules whose findings say that the switch lacks a VLAN: they come first. */
  private static final Set<String> VLANS = Set.of("vlan-inactive", "vlan-not-created");

  /** The rules whose findings say why a port does not carry a VLAN that it must carry. */
  private static final Set<String> CARRIERS =
      Set.of(
          "access-vlan-differs",
          "bundle-differs",
          "bundle-member-differs",
          "mode-differs",
          "native-vlan-differs",
          "native-vlan-in-use",
          "negotiation-open",
          "port-absent",
          "port-shut",
          "tagged-vlan-missing",
          "voice-vlan-differs");

  private static final Comparator<Spoken> ORDER =
      Comparator.<Spoken, PortName>comparing(
              one -> one.outcome().subject().port().orElse(null),
              Comparator.nullsFirst(Comparator.naturalOrder()))
          .thenComparing(one -> one.rule().id());

  private Consequences() {}

  /** What was said of one switch, without what follows from something else that was said. */
  static List<Spoken> listed(List<Spoken> said) {
    List<Spoken> left = new ArrayList<>(said);
    for (Spoken one : said) {
      if (one.outcome() instanceof Candidate derived && derived.derived()) {
        cause(derived, left)
            .ifPresent(
                cause -> {
                  Candidate first = (Candidate) cause.outcome();
                  left.remove(one);
                  left.set(
                      left.indexOf(cause),
                      new Spoken(
                          cause.rule(),
                          first.followedBy(
                              "Until then the " + derived.designed() + " does not work.")));
                });
      }
    }
    return left;
  }

  private static Optional<Spoken> cause(Candidate derived, List<Spoken> said) {
    return said.stream()
        .filter(
            one ->
                one.outcome() instanceof Candidate candidate
                    && !candidate.derived()
                    && explains(one.rule().id(), candidate, derived))
        .min(ORDER);
  }

  private static boolean explains(String rule, Candidate cause, Candidate derived) {
    if (VLANS.contains(rule)) {
      return cause.vlans().containsAll(derived.vlans());
    }
    return CARRIERS.contains(rule)
        && cause.subject().place().filter(derived.others()::contains).isPresent()
        && (cause.vlans().isEmpty() || cause.vlans().intersects(derived.vlans()));
  }
}
