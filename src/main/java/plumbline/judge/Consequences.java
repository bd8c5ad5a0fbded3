package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    Map<Spoken, List<Spoken>> followers = new LinkedHashMap<>();
    for (Spoken one : said) {
      if (one.outcome() instanceof Candidate derived && derived.derived()) {
        List<Spoken> causes = causes(derived, said);
        if (!causes.isEmpty()) {
          left.remove(one);
          causes.forEach(
              cause -> followers.computeIfAbsent(cause, any -> new ArrayList<>()).add(one));
        }
      }
    }
    left.replaceAll(one -> followers.containsKey(one) ? carrying(one, followers.get(one)) : one);
    return left;
  }

  /** Causes that only together stop something each carry it, at its severity. */
  private static Spoken carrying(Spoken cause, List<Spoken> followers) {
    List<String> things =
        followers.stream()
            .sorted(ORDER)
            .map(one -> "the " + ((Candidate) one.outcome()).designed())
            .distinct()
            .toList();
    Candidate told =
        ((Candidate) cause.outcome())
            .followedBy(
                things.size() == 1
                    ? "Until then " + things.get(0) + " does not work."
                    : "Until then these do not work: " + String.join("; ", things) + ".");
    Severity own = severity(cause);
    Severity joint =
        followers.stream().map(Consequences::severity).sorted().findFirst().orElse(own);
    return new Spoken(cause.rule(), own.reaches(joint) ? told : told.at(joint));
  }

  private static Severity severity(Spoken one) {
    return ((Candidate) one.outcome()).severity().orElse(one.rule().floor());
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
