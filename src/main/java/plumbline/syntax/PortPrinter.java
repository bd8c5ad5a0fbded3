package plumbline.syntax;

import static java.util.Map.entry;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import plumbline.setting.Bundle;
import plumbline.setting.VoiceVlan;
import plumbline.statement.Form;
import plumbline.statement.ListChange;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.FastStart;
import plumbline.statement.PortCommand.Redundancy;
import plumbline.statement.SwitchCommand.TreeScope;
import plumbline.vlan.VlanSet;

/** Writes the commands of a port, without their form, in the order of the grammar. */
final class PortPrinter {
  private static final Map<Class<? extends PortCommand>, Function<PortCommand, String>> PRINTERS =
      Map.ofEntries(
          on(PortCommand.Description.class, c -> "description" + text(c.text())),
          on(PortCommand.InterfaceVlanName.class, c -> "name" + text(c.name())),
          on(PortCommand.Shutdown.class, c -> "shutdown"),
          on(PortCommand.Mtu.class, c -> "mtu" + operand(c.octets())),
          on(PortCommand.Speed.class, c -> "speed" + operand(c.speed())),
          on(PortCommand.Duplex.class, c -> "duplex" + operand(c.duplex())),
          on(
              PortCommand.SubinterfaceTag.class,
              c -> "encapsulation dot1q" + operand(c.vlan()) + (c.untagged() ? " native" : "")),
          on(PortCommand.Switched.class, c -> "switchport"),
          on(
              PortCommand.Mode.class,
              c -> "switchport mode" + operand(c.kind().map(PortPrinter::mode))),
          on(PortCommand.Nonegotiate.class, c -> "switchport nonegotiate"),
          on(
              PortCommand.AccessVlan.class,
              c -> (c.setsMode() ? "vlan access" : "switchport access vlan") + operand(c.vlan())),
          on(PortCommand.NativeVlan.class, PortPrinter::nativeVlan),
          on(PortCommand.NativeTagging.class, c -> "switchport trunk native vlan tag"),
          on(PortCommand.Allowed.class, PortPrinter::allowed),
          on(
              PortCommand.Pruning.class,
              c -> "switchport trunk pruning vlan" + change(c.change(), c.vlans())),
          on(
              PortCommand.TrunkEncapsulation.class,
              c -> "switchport trunk encapsulation" + operand(c.protocol())),
          on(PortCommand.Unmodelled.class, PortCommand.Unmodelled::keywords),
          on(PortCommand.FastStart.class, PortPrinter::fastStart),
          on(PortCommand.BpduGuard.class, c -> "spanning-tree bpduguard" + toggle(c.enable())),
          on(PortCommand.BpduFilter.class, c -> "spanning-tree bpdufilter" + toggle(c.enable())),
          on(
              PortCommand.Guard.class,
              c -> "spanning-tree guard" + operand(c.kind().map(PortPrinter::keyword))),
          on(PortCommand.TreeOnPort.class, c -> "spanning-tree"),
          on(PortCommand.Udld.class, c -> c.enable() ? "udld port" : "udld port disable"),
          on(
              PortCommand.TreeCost.class,
              c -> "spanning-tree" + scope(c.scope()) + " cost" + operand(c.cost())),
          on(
              PortCommand.TreePortPriority.class,
              c -> "spanning-tree" + scope(c.scope()) + " port-priority" + operand(c.priority())),
          on(PortCommand.LinkType.class, c -> "spanning-tree link-type" + operand(c.type())),
          on(
              PortCommand.ChannelGroup.class,
              c ->
                  "channel-group"
                      + operand(c.id())
                      + c.mode().map(m -> " mode " + bundleMode(m)).orElse("")),
          on(
              PortCommand.BundleMode.class,
              c -> "lacp mode" + operand(c.mode().map(PortPrinter::bundleMode))),
          on(PortCommand.MinLinks.class, c -> "port-channel min-links" + operand(c.count())),
          on(PortCommand.MultiChassis.class, c -> "vpc" + operand(c.id())),
          on(
              PortCommand.QosTrust.class,
              c -> (c.needsEnable() ? "mls " : "") + "qos trust" + marking(c.marking())),
          on(
              PortCommand.ServicePolicy.class,
              c -> "service-policy " + (c.input() ? "input" : "output") + operand(c.name())),
          on(PortCommand.StormControl.class, c -> "storm-control " + c.traffic()),
          on(PortCommand.PortSecurity.class, c -> "switchport port-security"),
          on(PortCommand.SnoopingTrust.class, c -> "ip dhcp snooping trust"),
          on(PortCommand.InspectionTrust.class, c -> "ip arp inspection trust"),
          on(PortCommand.Address.class, PortPrinter::address),
          on(PortCommand.Unnumbered.class, c -> "ip unnumbered" + operand(c.lender())),
          on(PortCommand.Redundancy.class, PortPrinter::redundancy),
          on(
              PortCommand.AccessGroup.class,
              c ->
                  "ip access-group"
                      + c.name().map(n -> " " + n + (c.input() ? " in" : " out")).orElse("")),
          on(PortCommand.Inherit.class, PortPrinter::inherit),
          on(PortCommand.Autostate.class, c -> "autostate"),
          on(
              PortCommand.Voice.class,
              c -> "switchport voice vlan" + operand(c.voice().map(VoiceVlan::toString))));

  private PortPrinter() {}

  private static <T extends PortCommand>
      Map.Entry<Class<? extends PortCommand>, Function<PortCommand, String>> on(
          Class<T> type, Function<T, String> printer) {
    return entry(type, command -> printer.apply(type.cast(command)));
  }

  static String print(PortCommand command, Form form) {
    if (form == Form.SET && command instanceof PortCommand.Voice voice && voice.voice().isEmpty()) {
      return "switchport voice vlan none";
    }
    return PRINTERS.get(command.getClass()).apply(command);
  }

  private static String mode(PortCommand.Mode.Kind kind) {
    return switch (kind) {
      case ACCESS -> "access";
      case TRUNK -> "trunk";
      case DYNAMIC_AUTO -> "dynamic auto";
      case DYNAMIC_DESIRABLE -> "dynamic desirable";
      case OTHER -> "general";
    };
  }

  private static String nativeVlan(PortCommand.NativeVlan line) {
    return line.setsMode()
        ? "vlan trunk native" + operand(line.vlan()) + (line.tagged() ? " tag" : "")
        : "switchport trunk native vlan" + operand(line.vlan());
  }

  private static String allowed(PortCommand.Allowed line) {
    return (line.setsMode() ? "vlan trunk allowed" : "switchport trunk allowed vlan")
        + change(line.change(), line.vlans());
  }

  private static String change(ListChange change, VlanSet vlans) {
    String word = change == ListChange.SET ? "" : " " + keyword(change);
    return word + (vlans.isEmpty() ? "" : " " + vlans);
  }

  private static String fastStart(FastStart line) {
    if (!line.reachesTrunks()) {
      return "spanning-tree portfast"
          + operand(
              line.kind().map(k -> k == FastStart.Kind.EDGE_TRUNK ? "edge trunk" : keyword(k)));
    }
    return line.kind().filter(k -> k == FastStart.Kind.NETWORK).isPresent()
        ? "spanning-tree port-type admin-network"
        : "spanning-tree common-config portfast"
            + toggle(line.kind().map(k -> k != FastStart.Kind.DISABLE));
  }

  private static String bundleMode(Bundle.Mode mode) {
    return mode == Bundle.Mode.STATIC ? "on" : mode.toString();
  }

  private static String marking(Optional<String> marking) {
    return operand(marking.map(m -> m.equals("device") ? "device any" : m));
  }

  private static String address(PortCommand.Address line) {
    return (line.version() == 6 ? "ipv6 address" : "ip address")
        + operand(line.address())
        + operand(line.mask())
        + (line.secondary() ? " secondary" : "");
  }

  private static String redundancy(Redundancy line) {
    if (line.kind() == Redundancy.Kind.ANYCAST) {
      return line.value()
          .map(address -> "ip virtual-router address " + address)
          .orElse("fabric forwarding mode anycast-gateway");
    }
    String group = line.kind() + operand(line.group());
    if (line.attribute() == Redundancy.Attribute.OTHER) {
      // A group's header names nothing but the group.
      if (line.value().isEmpty() && line.kind() == Redundancy.Kind.STANDBY) {
        return "hsrp" + line.group().map(id -> " " + id).orElse(" ipv4");
      }
      return group + operand(line.value());
    }
    String word =
        line.attribute() == Redundancy.Attribute.ADDRESS ? "ip" : keyword(line.attribute());
    return group + " " + word + operand(line.value());
  }

  private static String inherit(PortCommand.Inherit line) {
    String verb =
        switch (line.keyword()) {
          case "template" -> "source ";
          case "port-profile" -> "inherit ";
          default -> "";
        };
    return String.join(" ", verb + line.keyword(), String.join(" ", line.names())).strip();
  }

  static String scope(TreeScope scope) {
    if (!scope.instances().isEmpty()) {
      return " mst " + String.join(",", scope.instances().stream().map(String::valueOf).toList());
    }
    return scope.vlans().isEmpty() ? "" : " vlan " + scope.vlans();
  }

  static String text(Optional<String> text) {
    return operand(text.map(t -> Operands.isQuoted(t) ? '"' + t + '"' : t));
  }

  static String operand(Optional<?> operand) {
    return operand.map(value -> " " + value).orElse("");
  }

  private static String toggle(Optional<Boolean> on) {
    return operand(on.map(o -> o ? "enable" : "disable"));
  }

  static String keyword(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
