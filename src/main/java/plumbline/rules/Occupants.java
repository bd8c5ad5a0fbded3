package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.effective.Gateway;
import plumbline.effective.PortSettings;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.VoiceVlan;

/** Finds what lives in a VLAN on one switch: open access and voice ports, addresses. */
final class Occupants {
  private Occupants() {}

  /**
   * Something that lives there.
   *
   * @param subject where
   * @param found what it is
   * @param evidence the lines that put it there
   */
  record Occupant(Subject subject, String found, List<Evidence> evidence) {
    /** Copies the evidence. */
    Occupant {
      evidence = List.copyOf(evidence);
    }
  }

  /** Everything that certainly lives in the VLAN, ports first, in the order of their names. */
  static List<Occupant> of(SwitchCase device, DesignVlan vlan) {
    return Stream.concat(
            device.settings().ports().values().stream()
                .filter(port -> !port.get(Keys.SHUT).is(true) && port.get(Keys.SHUT).isDecided())
                .flatMap(port -> port(device, port, vlan).stream()),
            device.settings().gateways().stream()
                .filter(gateway -> gateway.vlan().equals(vlan.id()))
                .filter(gateway -> gateway.shut().is(false))
                .flatMap(gateway -> gateway(device, gateway, vlan).stream()))
        .toList();
  }

  private static Optional<Occupant> port(SwitchCase device, PortSettings port, DesignVlan vlan) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    boolean bridges = port.name().kind().isPhysical() || port.name().kind().isBundle();
    // left to negotiation, a port towards a host ends up as access
    boolean access = mode.is(PortMode.ACCESS) || mode.is(PortMode.NEGOTIATED);
    if (!bridges || !access) {
      return Optional.empty();
    }
    Setting<?> holder = port.get(Keys.ACCESS_VLAN);
    String kind =
        mode.is(PortMode.ACCESS) ? "open access port in " : "open port, not a trunk by itself, in ";
    if (!port.get(Keys.ACCESS_VLAN).is(vlan.id())) {
      holder = port.get(Keys.VOICE_VLAN);
      kind = "open port with voice VLAN ";
      if (!port.get(Keys.VOICE_VLAN).is(VoiceVlan.tagged(vlan.id()))) {
        return Optional.empty();
      }
    }
    return Optional.of(
        new Occupant(
            subject(device, port.name(), port.fullName()),
            kind + vlan,
            withHeader(port.header(), holder.evidence())));
  }

  private static Optional<Occupant> gateway(SwitchCase device, Gateway gateway, DesignVlan vlan) {
    if (gateway.addresses().value().filter(all -> !all.isEmpty()).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Occupant(
            subject(device, gateway.port(), device.settings().fullName(gateway.port())),
            "an address of the switch in " + vlan,
            withHeader(gateway.header(), gateway.addresses().evidence())));
  }

  private static Subject subject(SwitchCase device, PortName name, String fullName) {
    String behind =
        device.design().portsOf(device.designed().name()).stream()
            .filter(port -> port.port().equals(name))
            .findFirst()
            .map(DesignPort::subject)
            .orElse("");
    return Subject.ofPort(device.designed().name(), fullName, name, behind);
  }

  private static List<Evidence> withHeader(Evidence.Line header, List<Evidence> evidence) {
    if (evidence.stream().anyMatch(Evidence.Line.class::isInstance)) {
      return evidence;
    }
    List<Evidence> all = new ArrayList<>(List.of(header));
    all.addAll(evidence);
    return all;
  }
}
