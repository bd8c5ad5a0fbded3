package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
    List<Condition> conditions = new ArrayList<>();
    conditions.add(open(gateway.shut()));
    conditions.add(hasAddress(gateway));
    conditions.add(of(settings.routing(), "whether the switch routes"));
    if (gateway.port().sub().isPresent()) {
      conditions.add(parentIsOpen(gateway.port().parent()));
    } else {
      conditions.add(vlanIsActive(gateway.vlan()));
      conditions.add(reachesAPort(gateway));
    }
    return gateway.working(verdict(conditions));
  }

  /**
   * One thing that a gateway needs.
   *
   * @param holds whether it is so
   * @param why why that cannot be told; empty where it can
   * @param evidence what it rests on
   */
  private record Condition(Truth holds, String why, List<Evidence> evidence) {}

  private static Setting<Boolean> verdict(List<Condition> conditions) {
    List<Evidence> against =
        conditions.stream()
            .filter(one -> one.holds() == Truth.NO)
            .flatMap(one -> one.evidence().stream())
            .distinct()
            .toList();
    if (conditions.stream().anyMatch(one -> one.holds() == Truth.NO)) {
      return new Setting.Known<>(false, against);
    }
    Optional<Condition> open =
        conditions.stream().filter(one -> one.holds() == Truth.UNKNOWN).findFirst();
    if (open.isPresent()) {
      return new Setting.Unknown<>(open.get().why(), open.get().evidence());
    }
    return new Setting.Known<>(
        true, conditions.stream().flatMap(one -> one.evidence().stream()).distinct().toList());
  }

  private static Condition of(Setting<Boolean> setting, String what) {
    return new Condition(
        setting.value().map(Truth::of).orElse(Truth.UNKNOWN),
        what + " cannot be told: " + setting.reason().orElse("nothing says so"),
        setting.evidence());
  }

  private static Condition open(Setting<Boolean> shut) {
    return of(shut.map(closed -> !closed), "whether the interface is shut");
  }

  private Condition parentIsOpen(PortName parent) {
    return settings
        .port(parent)
        .map(port -> open(port.get(Keys.SHUT)))
        .orElseGet(
            () ->
                new Condition(
                    Truth.UNKNOWN,
                    "the text does not open " + settings.fullName(parent),
                    List.of()));
  }

  /** A virtual address of the anycast kind is an address of the interface. */
  private static Condition hasAddress(Gateway gateway) {
    Optional<Setting<String>> anycast =
        gateway.groups().stream()
            .filter(group -> group.kind() == Redundancy.Kind.ANYCAST)
            .map(Gateway.Group::address)
            .filter(address -> address.value().isPresent())
            .findFirst();
    if (anycast.isPresent() && gateway.addresses().value().isEmpty()) {
      return new Condition(Truth.YES, "", anycast.get().evidence());
    }
    Setting<List<String>> addresses = gateway.addresses();
    Truth holds = addresses.isDecided() ? Truth.of(addresses.value().isPresent()) : Truth.UNKNOWN;
    return new Condition(
        holds,
        "the address cannot be told: " + addresses.reason().orElse(""),
        addresses.evidence());
  }

  private Condition vlanIsActive(VlanId vlan) {
    VlanDatabase vlans = settings.vlans();
    VlanDatabase.Entry entry = vlans.entries().get(vlan);
    List<Evidence> evidence =
        entry != null
            ? entry.active().evidence()
            : List.of(new Evidence.Default("no stanza for VLAN " + vlan + ": " + vlans.why()));
    return new Condition(
        vlans.isActive(vlan),
        "whether VLAN " + vlan + " exists cannot be told: " + vlans.why(),
        evidence);
  }

  private Condition reachesAPort(Gateway gateway) {
    if (gateway.autostate().is(false)) {
      return new Condition(Truth.YES, "", gateway.autostate().evidence());
    }
    VlanId vlan = gateway.vlan();
    Truth reaches = settings.reachesPort(vlan);
    Evidence fact =
        new Evidence.Default(
            (reaches == Truth.YES
                    ? "a port that is open carries VLAN "
                    : "no open port carries VLAN ")
                + vlan);
    return new Condition(
        reaches == Truth.NO && !gateway.autostate().isDecided() ? Truth.UNKNOWN : reaches,
        "whether an open port carries VLAN " + vlan + " cannot be told",
        reaches == Truth.UNKNOWN ? List.of() : List.of(fact));
  }
}
