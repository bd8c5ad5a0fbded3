package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.design.DesignGateway;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.effective.Gateway;
import plumbline.effective.Gateway.Need;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.effective.SwitchSettings;
import plumbline.effective.VlanDatabase;
import plumbline.finding.Proof;
import plumbline.rules.Outcome.Undecided;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.yaml.Position;

/** Answers what the rules about gateways share. */
final class Routed {
  /** What makes an interface route at all, whether its VLAN reaches a port or not. */
  private static final List<Kind> ROUTES =
      List.of(Kind.ADDRESS, Kind.ROUTING, Kind.OPEN, Kind.PARENT);

  private Routed() {}

  /** What the design makes this switch route, in the order of the design. */
  static List<DesignGateway.Served> served(SwitchCase device) {
    return device.design().gateways().values().stream()
        .filter(gateway -> gateway.outside().isEmpty())
        .filter(gateway -> gateway.name().equals(device.designed().name()))
        .flatMap(gateway -> gateway.vlans().stream())
        .toList();
  }

  /** What the design makes this switch do for a VLAN, if it is a gateway of it. */
  static Optional<DesignGateway.Served> served(SwitchCase device, VlanId vlan) {
    return served(device).stream().filter(one -> one.vlan().id().equals(vlan)).findFirst();
  }

  /** The interfaces of the switch in a VLAN, with an address or without. */
  static List<Gateway> in(SwitchCase device, VlanId vlan) {
    return device.settings().gateways().stream()
        .filter(gateway -> gateway.vlan().equals(vlan))
        .toList();
  }

  /** Whether an interface in this VLAN is by design for the switch's own management. */
  static boolean isManagement(SwitchCase device, VlanId vlan) {
    return served(device, vlan).isEmpty()
        && device
            .designed()
            .managementVlan()
            .filter(wanted -> wanted.value().id().equals(vlan))
            .isPresent();
  }

  /** Whether the interface routes: it has an address, stands open, and the switch routes. */
  static Truth routes(Gateway gateway) {
    return ROUTES.stream().map(gateway::has).reduce(Truth.YES, Truth::and);
  }

  /** The interface, with its VLAN in words. */
  static Subject subject(SwitchCase device, Gateway gateway) {
    String behind =
        device
            .designOf(gateway.port())
            .map(DesignPort::subject)
            .orElseGet(
                () ->
                    device
                        .design()
                        .vlan(gateway.vlan())
                        .map(DesignVlan::name)
                        .orElse("VLAN " + gateway.vlan()));
    return Subject.ofPort(
        device.designed().name(),
        device.settings().fullName(gateway.port()),
        gateway.port(),
        behind);
  }

  /** The lines that make the interface what it is: its header, its addresses, its groups. */
  static List<Proof> proofs(SwitchCase device, Gateway gateway) {
    List<Evidence> evidence = new ArrayList<>();
    evidence.add(gateway.header());
    gateway.need(Kind.ADDRESS).ifPresent(need -> evidence.addAll(need.evidence()));
    return device.proofs(evidence);
  }

  /** The first thing that leaves open whether the interface routes. */
  static Optional<Need> open(Gateway gateway) {
    return ROUTES.stream()
        .flatMap(kind -> gateway.need(kind).stream())
        .filter(need -> need.holds() == Truth.UNKNOWN)
        .findFirst();
  }

  /** The outcome of something that the text leaves open at an interface. */
  static Undecided undecided(
      SwitchCase device, Gateway gateway, Need open, String designed, Position at) {
    List<Evidence> evidence = new ArrayList<>(open.evidence());
    evidence.add(gateway.header());
    return Undecided.of(
        subject(device, gateway),
        cause(device, gateway, open.kind()),
        open.why(),
        designed,
        device.proofs(evidence),
        Optional.of(at));
  }

  private static Undecided.Cause cause(SwitchCase device, Gateway gateway, Kind kind) {
    SwitchSettings settings = device.settings();
    return switch (kind) {
      case OPEN -> device.cause(gateway.shut());
      case ADDRESS -> device.cause(gateway.addresses());
      case ROUTING -> device.cause(settings.routing());
      case PARENT ->
          settings
              .port(gateway.port().parent())
              .map(port -> device.cause(port.get(Keys.SHUT)))
              .orElseGet(device::listCause);
      case VLAN -> vlanCause(device, gateway.vlan());
      case PORT ->
          gateway.has(Kind.VLAN) == Truth.UNKNOWN
              ? vlanCause(device, gateway.vlan())
              : device.listCause();
    };
  }

  private static Undecided.Cause vlanCause(SwitchCase device, VlanId vlan) {
    Optional<Setting<Boolean>> active =
        Optional.ofNullable(device.settings().vlans().entries().get(vlan))
            .map(VlanDatabase.Entry::active);
    Undecided.Cause whole = device.listCause();
    return active
        .map(device::cause)
        .orElse(whole == Undecided.Cause.CUT ? whole : Undecided.Cause.VLAN_DATABASE);
  }
}
