package plumbline.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.finding.Proof;
import plumbline.port.PortName;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;
import plumbline.vlan.VlanId;

/** Finds what lives in a VLAN on one switch: open access and voice ports, addresses. */
final class Occupants {
  private Occupants() {}

  /**
   * Something that lives there, or perhaps does.
   *
   * @param subject where
   * @param found what it is
   * @param open the setting that leaves it open; empty where it lives there for certain
   * @param proofs the lines that put it there, or leave it open
   */
  record Occupant(Subject subject, String found, Optional<Setting<?>> open, List<Proof> proofs) {
    /** Copies the proofs. */
    Occupant {
      proofs = List.copyOf(proofs);
    }
  }

  /** Everything that lives in the VLAN, ports first, in the order of their names. */
  static List<Occupant> of(SwitchCase device, DesignVlan vlan) {
    return Stream.concat(
            device.settings().ports().values().stream()
                .filter(port -> bridges(device, port))
                .flatMap(port -> port(device, port, vlan).stream()),
            device.settings().gateways().stream()
                .filter(gateway -> gateway.vlan().equals(vlan.id()))
                .flatMap(gateway -> gateway(device, gateway, vlan).stream()))
        .toList();
  }

  /** A member of a bundle that has a stanza bridges nothing of its own: the bundle does. */
  private static boolean bridges(SwitchCase device, PortSettings port) {
    boolean joined =
        device.settings().ports().keySet().stream()
            .filter(name -> name.kind().isBundle())
            .anyMatch(bundle -> port.isMemberOf(bundle));
    return (port.name().kind().isPhysical() || port.name().kind().isBundle()) && !joined;
  }

  private static Optional<Occupant> port(SwitchCase device, PortSettings port, DesignVlan vlan) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    Setting<Boolean> shut = port.get(Keys.SHUT);
    Setting<VlanId> access = port.get(Keys.ACCESS_VLAN);
    Setting<VoiceVlan> voice = port.get(Keys.VOICE_VLAN);
    boolean hasVoice = voice.is(VoiceVlan.tagged(vlan.id()));
    Setting<?> holder = hasVoice ? voice : access;
    // left to negotiation, a port towards a host ends up as access
    boolean mayBridgeHosts =
        !mode.isDecided() || mode.is(PortMode.ACCESS) || mode.is(PortMode.NEGOTIATED);
    boolean mayLiveHere = hasVoice || access.is(vlan.id()) || !access.isDecided();
    if (!mayBridgeHosts || shut.is(true) || !mayLiveHere) {
      return Optional.empty();
    }
    Optional<Setting<?>> open =
        Stream.<Setting<?>>of(holder, mode, shut).filter(one -> !one.isDecided()).findFirst();
    String kind = mode.is(PortMode.ACCESS) ? "open access port" : "open port that is no trunk";
    return Optional.of(
        new Occupant(
            subject(device, port.name(), port.fullName()),
            kind + (hasVoice ? " with voice VLAN " : " in ") + vlan,
            open,
            device.proofs(
                port.header(), open.<Setting<?>>map(one -> one).orElse(holder).evidence())));
  }

  private static Optional<Occupant> gateway(SwitchCase device, Gateway gateway, DesignVlan vlan) {
    Setting<List<String>> addresses = gateway.addresses();
    boolean none = addresses.isDecided() && addresses.value().filter(a -> !a.isEmpty()).isEmpty();
    if (none || gateway.shut().is(true)) {
      return Optional.empty();
    }
    Optional<Setting<?>> open =
        Stream.<Setting<?>>of(addresses, gateway.shut())
            .filter(one -> !one.isDecided())
            .findFirst();
    return Optional.of(
        new Occupant(
            subject(device, gateway.port(), device.settings().fullName(gateway.port())),
            "an address of the switch in " + vlan,
            open,
            device.proofs(gateway.header(), addresses.evidence())));
  }

  private static Subject subject(SwitchCase device, PortName name, String fullName) {
    String behind = device.designOf(name).map(DesignPort::subject).orElse("");
    return Subject.ofPort(device.designed().name(), fullName, name, behind);
  }
}
