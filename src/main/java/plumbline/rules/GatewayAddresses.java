package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import plumbline.statement.PortCommand.Redundancy;

/** Holds the addresses of two gateways of one VLAN against each other. */
final class GatewayAddresses {
  private GatewayAddresses() {}

  /**
   * In what their own addresses do not go together, as far as their texts decide it.
   *
   * @param first the first in design order
   */
  static List<PairGap> gaps(GatewaySide first, GatewaySide second) {
    List<PairGap> gaps = new ArrayList<>();
    subnets(first, second, gaps);
    own(first, second, gaps);
    return gaps;
  }

  private static void subnets(GatewaySide first, GatewaySide second, List<PairGap> gaps) {
    Set<String> here = first.subnets();
    Set<String> there = second.subnets();
    boolean open =
        Stream.of(first, second)
            .anyMatch(
                side -> !side.gateway().addresses().isDecided() || side.openAddress().isPresent());
    if (open || here.isEmpty() || there.isEmpty() || here.equals(there)) {
      return;
    }
    gaps.add(
        new PairGap(
            PairGap.End.NEITHER,
            subnets(here),
            subnets(there),
            "The two disagree on which addresses are in the VLAN: hosts that only one of them"
                + " counts in it lose their gateway when that one fails.",
            first.gateway().addresses().evidence(),
            second.gateway().addresses().evidence()));
  }

  private static String subnets(Set<String> all) {
    return (all.size() == 1 ? "subnet " : "subnets ") + Words.list(List.copyOf(all));
  }

  /** Two interfaces with one plain address; where both are anycast, that is the point of it. */
  private static void own(GatewaySide first, GatewaySide second, List<PairGap> gaps) {
    boolean anycast =
        Stream.of(first, second)
            .allMatch(
                side ->
                    side.gateway().groups().stream()
                        .anyMatch(group -> group.kind() == Redundancy.Kind.ANYCAST));
    Set<String> both = new TreeSet<>(hosts(first));
    both.retainAll(hosts(second));
    if (anycast || both.isEmpty()) {
      return;
    }
    String address = Words.list(List.copyOf(both));
    gaps.add(
        new PairGap(
            PairGap.End.NEITHER,
            "own address " + address,
            "own address " + address,
            "Both claim "
                + address
                + " for themselves: hosts reach one or the other by chance, and a switch that"
                + " notices the other may refuse the address.",
            first.gateway().addresses().evidence(),
            second.gateway().addresses().evidence()));
  }

  /** The IPv4 addresses of its own. */
  static Set<String> hosts(GatewaySide side) {
    return side.addresses().stream().map(Subnet::host).collect(Collectors.toSet());
  }
}
