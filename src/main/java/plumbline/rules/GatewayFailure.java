package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import plumbline.design.DesignGateway;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.finding.Place;
import plumbline.rules.Outcome.Candidate;
import plumbline.setting.Evidence;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Says what keeps a gateway from working, and what follows from that. */
final class GatewayFailure {
  private GatewayFailure() {}

  /** The finding of an interface that lacks these needs, or the designed address. */
  static Candidate of(
      SwitchCase device,
      Gateway gateway,
      DesignGateway.Served served,
      List<Need> failing,
      Truth address) {
    boolean derived =
        address != Truth.NO
            && failing.stream()
                .allMatch(need -> need.kind() == Kind.VLAN || need.kind() == Kind.PORT);
    boolean noVlan = failing.stream().anyMatch(need -> need.kind() == Kind.VLAN);
    List<String> found = new ArrayList<>();
    List<Evidence> evidence = new ArrayList<>();
    evidence.add(gateway.header());
    for (Need need : failing) {
      // where the VLAN is not there, that no port carries it says nothing more
      if (need.kind() != Kind.PORT || !noVlan) {
        found.add(lack(device, gateway, need.kind()));
        evidence.addAll(need.evidence());
      }
    }
    if (address == Truth.NO) {
      found.add("address " + addresses(gateway));
      evidence.addAll(gateway.addresses().evidence());
    }
    Candidate candidate =
        Candidate.of(
                Routed.subject(device, gateway),
                designed(served),
                String.join("; ", found),
                consequence(device, served)
                    + (Routed.routes(gateway) == Truth.NO ? unfiltered(gateway, served) : ""),
                device.proofs(evidence),
                Optional.of(served.at()))
            .about(VlanSet.of(served.vlan().id().number()));
    return derived ? candidate.derivedFrom(carriers(device, served.vlan().id())) : candidate;
  }

  private static String addresses(Gateway gateway) {
    List<String> all = new ArrayList<>();
    gateway.addresses().value().stream().flatMap(List::stream).forEach(all::add);
    gateway.groups().stream()
        .flatMap(group -> group.address().value().stream())
        .map(virtual -> virtual + " (virtual)")
        .forEach(all::add);
    return Words.list(all.stream().distinct().toList());
  }

  private static String lack(SwitchCase device, Gateway gateway, Kind kind) {
    String vlan = device.name(gateway.vlan());
    return switch (kind) {
      case OPEN -> device.settings().fullName(gateway.port()) + " is shut";
      case ADDRESS -> device.settings().fullName(gateway.port()) + " has no address";
      case PARENT -> device.settings().fullName(gateway.port().parent()) + " is shut";
      case VLAN -> vlan + " " + device.whyIdle(gateway.vlan()).orElse("is not active here");
      case PORT -> "no open port carries " + vlan;
      case ROUTING -> "the switch does not route";
    };
  }

  /** The ports that the design makes carry the VLAN here. */
  private static List<Place> carriers(SwitchCase device, VlanId vlan) {
    return device.ports().stream()
        .filter(PortCase::isSwitching)
        .filter(port -> Needed.vlans(port.port().role()).contains(vlan))
        .flatMap(port -> port.subject().place().stream())
        .toList();
  }

  /** What the design says, as the object of a sentence. */
  static String designed(DesignGateway.Served served) {
    return "gateway for "
        + served.vlan()
        + served.address().map(address -> " with address " + address).orElse("");
  }

  /** That a gateway lacks its filter shows only once it works. */
  static String unfiltered(Gateway gateway, DesignGateway.Served served) {
    return served.vlan().filter() && gateway.filtered().is(false)
        ? " Once it works, "
            + served.vlan()
            + " lies open to every network that the switch reaches: no packet filter stands on"
            + " the gateway."
        : "";
  }

  /** What the hosts of the VLAN lose, and what is left to them. */
  static String consequence(SwitchCase device, DesignGateway.Served served) {
    List<String> others =
        device.design().gateways().values().stream()
            .filter(gateway -> !gateway.name().equals(device.designed().name()))
            .filter(
                gateway ->
                    gateway.vlans().stream()
                        .anyMatch(one -> one.vlan().id().equals(served.vlan().id())))
            .map(DesignGateway::name)
            .collect(Collectors.toList());
    String hosts = "Hosts in " + served.vlan();
    return others.isEmpty()
        ? hosts + " reach nothing outside their VLAN: the design gives them no other gateway."
        : hosts
            + " cannot leave their VLAN here; what is left to them is "
            + Words.list(others)
            + ".";
  }
}
