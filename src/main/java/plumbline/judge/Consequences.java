package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import plumbline.finding.Severity;
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
        List<Spoken> causes = causes(derived, left);
        if (!causes.isEmpty()) {
          left.remove(one);
          Severity joint = derived.severity().orElse(one.rule().floor());
          causes.forEach(cause -> left.set(left.indexOf(cause), carrying(cause, derived, joint)));
        }
      }
    }
    return left;
  }

  /** Causes that only together stop something each carry it, at its severity. */
  private static Spoken carrying(Spoken cause, Candidate derived, Severity joint) {
    Candidate told =
        ((Candidate) cause.outcome())
            .followedBy("Until then the " + derived.designed() + " does not work.");
    Severity own = told.severity().orElse(cause.rule().floor());
    return new Spoken(cause.rule(), own.reaches(joint) ? told : told.at(joint));
  }

  /** One VLAN finding of the switch is enough; else every port that lacks the VLAN has a part. */
  private static List<Spoken> causes(Candidate derived, List<Spoken> said) {
    List<Spoken> all =
        said.stream()
            .filter(
                one ->
                    one.outcome() instanceof Candidate candidate
                        && !candidate.derived()
                        && explains(one.rule().id(), candidate, derived))
            .sorted(ORDER)
            .toList();
    boolean ofSwitch = !all.isEmpty() && VLANS.contains(all.get(0).rule().id());
    return ofSwitch ? all.subList(0, 1) : all;
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
