package plumbline.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.rules.Outcome.Candidate;
import plumbline.vlan.VlanSet;

/**
 * Takes away, on one switch, that a trunk does not let through what the whole switch lacks or keeps
 * inactive: that is told with the finding of the switch. A trunk that bars another VLAN as well
 * keeps its finding.
 */
final class AbsentVlans {
  private static final Set<String> OF_SWITCH = Set.of("vlan-not-created", "vlan-inactive");
  private static final String AT_PORT = "tagged-vlan-missing";

  private AbsentVlans() {}

  /** What is left of what was said of one switch and its ports. */
  static List<Spoken> merged(List<Spoken> said) {
    VlanSet gone =
        said.stream()
            .filter(AbsentVlans::isOfSwitch)
            .map(AbsentVlans::vlans)
            .reduce(VlanSet.NONE, VlanSet::plus);
    List<Spoken> hidden =
        said.stream()
            .filter(one -> isAtPort(one) && gone.containsAll(vlans(one)))
            .sorted(Comparator.comparing(one -> one.outcome().subject().port().orElseThrow()))
            .toList();
    List<Spoken> left = new ArrayList<>();
    for (Spoken one : said) {
      if (!hidden.contains(one)) {
        left.add(isOfSwitch(one) ? listing(one, hidden) : one);
      }
    }
    return left;
  }

  private static boolean isOfSwitch(Spoken one) {
    return OF_SWITCH.contains(one.rule().id()) && one.outcome() instanceof Candidate;
  }

  private static boolean isAtPort(Spoken one) {
    return one.rule().id().equals(AT_PORT) && !vlans(one).isEmpty();
  }

  private static VlanSet vlans(Spoken one) {
    return one.outcome() instanceof Candidate candidate ? candidate.vlans() : VlanSet.NONE;
  }

  private static Spoken listing(Spoken cause, List<Spoken> hidden) {
    List<Spoken> own = hidden.stream().filter(one -> vlans(one).intersects(vlans(cause))).toList();
    if (own.isEmpty()) {
      return cause;
    }
    String ports =
        own.stream()
            .flatMap(one -> one.outcome().subject().place().stream())
            .flatMap(place -> place.port().stream())
            .distinct()
            .collect(Collectors.joining(", "));
    return new Spoken(
        cause.rule(),
        ((Candidate) cause.outcome())
            .followedBy(
                "When this is repaired, more remains: "
                    + own.get(0).rule().summary()
                    + " ("
                    + ports
                    + ")."));
  }
}
