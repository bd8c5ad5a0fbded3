package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import plumbline.effective.Gateway.Need;
import plumbline.effective.Gateway.Need.Kind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.vlan.VlanId;

/**
 * Decides whether a gateway works. A sub-interface needs its port open and no VLAN of the switch's
 * database: it takes the tagged frames off its own port.
 */
final class GatewayRule {
  private final SwitchSettings settings;

  GatewayRule(SwitchSettings settings) {
    this.settings = settings;
  }

  /** The gateway with its answer. */
  Gateway judge(Gateway gateway) {
    List<Need> conditions = new ArrayList<>();
    conditions.add(open(Kind.OPEN, gateway.shut()));
    conditions.add(hasAddress(gateway));
    conditions.add(of(Kind.ROUTING, settings.routing(), "whether the switch routes"));
    if (gateway.port().sub().isPresent()) {
      conditions.add(parentIsOpen(gateway.port().parent()));
    } else {
      conditions.add(vlanIsActive(gateway.vlan()));
      conditions.add(reachesAPort(gateway));
    }
    return gateway.working(verdict(conditions), conditions);
  }

  private static Setting<Boolean> verdict(List<Need> conditions) {
    List<Evidence> against =
        conditions.stream()
            .filter(one -> one.holds() == Truth.NO)
            .flatMap(one -> one.evidence().stream())
            .distinct()
            .toList();
    if (conditions.stream().anyMatch(one -> one.holds() == Truth.NO)) {
      return new Setting.Known<>(false, against);
    }
    Optional<Need> open =
        conditions.stream().filter(one -> one.holds() == Truth.UNKNOWN).findFirst();
    if (open.isPresent()) {
      return new Setting.Unknown<>(open.get().why(), open.get().evidence());
    }
    return new Setting.Known<>(
        true, conditions.stream().flatMap(one -> one.evidence().stream()).distinct().toList());
  }

  private static Need of(Kind kind, Setting<Boolean> setting, String what) {
    return new Need(
        kind,
        setting.value().map(Truth::of).orElse(Truth.UNKNOWN),
        what + " cannot be told: " + setting.reason().orElse("nothing says so"),
        setting.evidence());
  }

  private static Need open(Kind kind, Setting<Boolean> shut) {
    return of(kind, shut.map(closed -> !closed), "whether the interface is shut");
  }

  private Need parentIsOpen(PortName parent) {
    return settings
        .port(parent)
        .map(port -> open(Kind.PARENT, port.get(Keys.SHUT)))
        .orElseGet(
            () ->
                new Need(
                    Kind.PARENT,
                    Truth.UNKNOWN,
                    "the text does not open " + settings.fullName(parent),
                    List.of()));
  }

  /** A virtual address of the anycast kind is an address of the interface. */
  private static Need hasAddress(Gateway gateway) {
    Optional<Setting<String>> anycast =
        gateway.groups().stream()
            .filter(group -> group.kind() == Redundancy.Kind.ANYCAST)
            .map(Gateway.Group::address)
            .filter(address -> address.value().isPresent())
            .findFirst();
    if (anycast.isPresent() && gateway.addresses().value().isEmpty()) {
      return new Need(Kind.ADDRESS, Truth.YES, "", anycast.get().evidence());
    }
    Setting<List<String>> addresses = gateway.addresses();
    Truth holds = addresses.isDecided() ? Truth.of(addresses.value().isPresent()) : Truth.UNKNOWN;
    return new Need(
        Kind.ADDRESS,
        holds,
        "the address cannot be told: " + addresses.reason().orElse(""),
        addresses.evidence());
  }

  private Need vlanIsActive(VlanId vlan) {
    VlanDatabase vlans = settings.vlans();
    VlanDatabase.Entry entry = vlans.entries().get(vlan);
    List<Evidence> evidence =
        entry != null
            ? entry.active().evidence()
            : List.of(new Evidence.Default("no stanza for VLAN " + vlan + ": " + vlans.why()));
    return new Need(
        Kind.VLAN,
        vlans.isActive(vlan),
        "whether VLAN " + vlan + " exists cannot be told: " + vlans.why(),
        evidence);
  }

  private Need reachesAPort(Gateway gateway) {
    if (gateway.autostate().is(false)) {
      return new Need(Kind.PORT, Truth.YES, "", gateway.autostate().evidence());
    }
    VlanId vlan = gateway.vlan();
    Truth reaches = settings.reachesPort(vlan);
    Evidence fact =
        new Evidence.Default(
            (reaches == Truth.YES
                    ? "a port that is open carries VLAN "
                    : "no open port carries VLAN ")
                + vlan);
    return new Need(
        Kind.PORT,
        reaches == Truth.NO && !gateway.autostate().isDecided() ? Truth.UNKNOWN : reaches,
        "whether an open port carries VLAN " + vlan + " cannot be told",
        reaches == Truth.UNKNOWN ? List.of() : List.of(fact));
  }
}
