package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.DesignGateway;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.finding.Place;
import plumbline.finding.Proof;
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
    boolean derived = address != Truth.NO && failing.stream().allMatch(GatewayFailure::isBelow);
    List<Place> carriers =
        gateway.port().sub().isPresent()
            ? parent(device, gateway)
            : carriers(device, served.vlan().id());
    boolean noVlan = failing.stream().anyMatch(need -> need.kind() == Kind.VLAN);
    List<String> found = new ArrayList<>();
    List<Evidence> evidence = new ArrayList<>();
    List<Evidence> whole = new ArrayList<>();
    evidence.add(gateway.header());
    for (Need need : failing) {
      // where the VLAN is not there, that no port carries it says nothing more
      if (derived ? need.kind() != Kind.PORT || !noVlan : !isElsewhere(need, noVlan, carriers)) {
        found.add(lack(device, gateway, need.kind()));
        boolean ofText = need.kind() == Kind.VLAN || need.kind() == Kind.PORT;
        (ofText ? whole : evidence).addAll(need.evidence());
      }
    }
    if (address == Truth.NO) {
      found.add(addresses(gateway));
      evidence.addAll(faulty(gateway));
    }
    Candidate candidate =
        Candidate.of(
                Routed.subject(device, gateway),
                designed(served),
                String.join("; ", found),
                consequence(device, served)
                    + (Routed.routes(gateway) == Truth.NO ? unfiltered(gateway, served) : ""),
                proofs(device, evidence, whole),
                Optional.of(served.at()))
            .about(VlanSet.of(served.vlan().id().number()));
    return derived ? candidate.derivedFrom(carriers) : candidate;
  }

  /** Whether the interface has the need of something else than itself. */
  private static boolean isBelow(Need need) {
    return need.kind() == Kind.VLAN || need.kind() == Kind.PORT || need.kind() == Kind.PARENT;
  }

  /** What the VLAN or a designed port lacks is a finding there, and no fault of the interface. */
  private static boolean isElsewhere(Need need, boolean noVlan, List<Place> carriers) {
    return switch (need.kind()) {
      case VLAN -> true;
      case PORT -> noVlan || !carriers.isEmpty();
      case PARENT -> !carriers.isEmpty();
      default -> false;
    };
  }

  /** The port of a sub-interface, where the design has it. */
  private static List<Place> parent(SwitchCase device, Gateway gateway) {
    return device
        .designOf(gateway.port().parent())
        .flatMap(port -> device.caseOf(port))
        .flatMap(port -> port.subject().place())
        .stream()
        .toList();
  }

  /** Where groups stand, hosts use their addresses, and the interface's own may be right. */
  private static String addresses(Gateway gateway) {
    List<String> virtual =
        gateway.groups().stream()
            .flatMap(group -> group.address().value().stream())
            .distinct()
            .toList();
    return virtual.isEmpty()
        ? "address " + Words.list(gateway.addresses().value().orElse(List.of()))
        : "virtual address " + Words.list(virtual);
  }

  /** The lines of the addresses that are found in the place of the designed one. */
  private static List<Evidence> faulty(Gateway gateway) {
    List<Evidence> virtual =
        gateway.groups().stream()
            .filter(group -> group.address().value().isPresent())
            .flatMap(group -> group.address().evidence().stream())
            .toList();
    return virtual.isEmpty() ? gateway.addresses().evidence() : virtual;
  }

  /** The evidence; what holds of the whole text is no default, but a fact of its file. */
  private static List<Proof> proofs(
      SwitchCase device, List<Evidence> evidence, List<Evidence> whole) {
    List<Evidence> all = new ArrayList<>(evidence);
    all.addAll(whole);
    return device.proofs(all).stream()
        .map(
            proof ->
                whole.contains(proof.evidence())
                    ? new Proof(Optional.of(device.settings().file()), proof.evidence())
                    : proof)
        .toList();
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
        .filter(port -> port.port().role().neededVlans().contains(vlan))
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

  /** What the hosts of the VLAN lose; whether another gateway works is not known here. */
  static String consequence(SwitchCase device, DesignGateway.Served served) {
    boolean alone =
        device.design().gateways().values().stream()
            .filter(gateway -> !gateway.name().equals(device.designed().name()))
            .flatMap(gateway -> gateway.vlans().stream())
            .noneMatch(one -> one.vlan().id().equals(served.vlan().id()));
    String hosts = "Hosts in " + served.vlan();
    return alone
        ? hosts + " reach nothing outside their VLAN: the design gives them no other gateway."
        : hosts + " cannot leave their VLAN through this switch.";
  }
}
