package plumbline.effective;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand.TreeScope;

/** Decides the settings that one kind of line decides alone, over a default. */
final class PlainRule {
  private final Globals globals;
  private final Dialect dialect;
  private final QosSwitch qos;

  /**
   * The rule for the ports of one switch.
   *
   * @param ports the ports that its text opens
   */
  PlainRule(Globals globals, Collection<PortName> ports) {
    this.globals = globals;
    this.qos = new QosSwitch(globals, ports);
    this.dialect = globals.dialect();
  }

  /**
   * A port of 1 Gb/s with optics has that speed only, negotiated or not; what other ports run at
   * without negotiation stands in no line.
   */
  private Setting<String> speed(PortDraft port) {
    Setting<String> said =
        port.lines()
            .last(Matter.SPEED, PortCommand.Speed.class)
            .operand(PortCommand.Speed::speed, dialect.fact("auto", "speed auto"));
    if (!said.is(PortCommand.Speed.OWN)) {
      return said;
    }
    return port.name().kind() == PortKind.GIGABIT_ETHERNET
        ? said.map(own -> "1000")
        : new Setting.Unknown<>(
            "the speed of a port that does not negotiate stands in no line", said.evidence());
  }

  /** Puts them all; needs the mode. */
  void apply(PortDraft port) {
    Lines lines = port.lines();
    tree(port, lines);
    bundle(port, lines);
    port.put(Keys.SPEED, speed(port));
    port.put(
        Keys.DUPLEX,
        lines
            .last(Matter.DUPLEX, PortCommand.Duplex.class)
            .operand(PortCommand.Duplex::duplex, dialect.fact("auto", "duplex auto")));
    port.put(Keys.MTU, mtu(port));
    port.put(Keys.QOS_TRUST, qos.trust(lines));
    port.put(Keys.POLICY_IN, policy(lines, true));
    port.put(Keys.POLICY_OUT, policy(lines, false));
    port.put(Keys.STORM_CONTROL, stormControl(lines));
    port.put(
        Keys.PORT_SECURITY,
        lines
            .last(Matter.SECURITY, PortCommand.PortSecurity.class)
            .flag(dialect.fact(false, "no port security")));
    port.put(
        Keys.SNOOPING_TRUST,
        lines
            .last(Matter.SNOOPING, PortCommand.SnoopingTrust.class)
            .flag(dialect.fact(false, "no snooping trust")));
    port.put(
        Keys.INSPECTION_TRUST,
        lines
            .last(Matter.INSPECTION, PortCommand.InspectionTrust.class)
            .flag(dialect.fact(false, "no inspection trust")));
    port.put(
        Keys.DESCRIPTION,
        lines
            .last(Matter.DESCRIPTION, PortCommand.Description.class)
            .operand(PortCommand.Description::text, dialect.nothing("no description")));
  }

  private void tree(PortDraft port, Lines lines) {
    port.put(
        Keys.STP_COST,
        lines
            .last(
                Matter.COST,
                PortCommand.TreeCost.class,
                line ->
                    line.command() instanceof PortCommand.TreeCost cost
                        && cost.scope().equals(TreeScope.ALL))
            .operand(PortCommand.TreeCost::cost, dialect.nothing("path cost from the speed")));
    port.put(
        Keys.STP_PORT_PRIORITY,
        lines
            .last(
                Matter.PORT_PRIORITY,
                PortCommand.TreePortPriority.class,
                line ->
                    line.command() instanceof PortCommand.TreePortPriority priority
                        && priority.scope().equals(TreeScope.ALL))
            .operand(PortCommand.TreePortPriority::priority, dialect.nothing("port priority 128")));
    port.put(
        Keys.LINK_TYPE,
        lines
            .last(Matter.LINK_TYPE, PortCommand.LinkType.class)
            .operand(PortCommand.LinkType::type, dialect.nothing("link type from the duplex")));
  }

  private void bundle(PortDraft port, Lines lines) {
    port.put(
        Keys.BUNDLE,
        lines
            .last(Matter.BUNDLE, PortCommand.ChannelGroup.class)
            .operand(
                group ->
                    group.id().map(id -> new Bundle(id, group.mode().orElse(Bundle.Mode.STATIC))),
                dialect.nothing("no bundle")));
    port.put(
        Keys.MIN_LINKS,
        lines
            .last(Matter.MIN_LINKS, PortCommand.MinLinks.class)
            .operand(PortCommand.MinLinks::count, dialect.fact(1, "one link suffices")));
    port.put(
        Keys.MULTI_CHASSIS,
        lines
            .last(Matter.MULTI_CHASSIS, PortCommand.MultiChassis.class)
            .operand(PortCommand.MultiChassis::id, dialect.nothing("no multi-chassis number")));
  }

  private Setting<String> policy(Lines lines, boolean input) {
    return lines
        .last(
            Matter.POLICY,
            PortCommand.ServicePolicy.class,
            line ->
                line.command() instanceof PortCommand.ServicePolicy policy
                    && policy.input() == input)
        .operand(
            PortCommand.ServicePolicy::name,
            dialect.nothing(input ? "no policy for received frames" : "no policy for sent frames"));
  }

  /** One limited kind of traffic suffices; the others may be negated. */
  private Setting<Boolean> stormControl(Lines lines) {
    Setting<Boolean> last =
        lines
            .last(Matter.STORM, PortCommand.StormControl.class)
            .flag(dialect.fact(false, "no storm control"));
    if (last.is(true) || !last.isDecided()) {
      return last;
    }
    Map<Command, Statement> standing = new LinkedHashMap<>();
    for (Statement statement : lines.statements()) {
      if (statement.command() instanceof PortCommand.StormControl) {
        standing.remove(statement.command());
        if (statement.form() == Form.SET) {
          standing.put(statement.command(), statement);
        }
      }
    }
    return standing.values().stream()
        .findFirst()
        .map(statement -> Setting.known(true, (Evidence) statement.evidence()))
        .orElse(last);
  }

  private Setting<Integer> mtu(PortDraft port) {
    return port.lines()
        .last(Matter.MTU, PortCommand.Mtu.class)
        .operand(PortCommand.Mtu::octets, mtuWithoutLine(port.name(), port.get(Keys.MODE)));
  }

  private Setting<Integer> mtuWithoutLine(PortName port, Setting<PortMode> mode) {
    Setting<Integer> fallback =
        dialect
            .defaults()
            .mtu()
            .map(octets -> dialect.fact(octets, "MTU " + octets))
            .orElseGet(() -> dialect.differs("the MTU"));
    if (!dialect.defaults().systemMtuSets()) {
      return fallback;
    }
    Setting<Integer> system = globals.systemMtu();
    if (mode.is(PortMode.ROUTED)) {
      return orElse(globals.routedMtu(), orElse(system, fallback));
    }
    Optional<Boolean> fast = isFast(port.kind());
    if (fast.isEmpty()
        && !(globals.jumboMtu() instanceof Setting.Absent<Integer>)
        && !globals.jumboMtu().equals(system)) {
      return Setting.unknown("the jumbo MTU reaches only ports of 1 Gb/s and more");
    }
    return fast.orElse(false)
        ? orElse(globals.jumboMtu(), orElse(system, fallback))
        : orElse(system, fallback);
  }

  private static Setting<Integer> orElse(Setting<Integer> line, Setting<Integer> fallback) {
    return line instanceof Setting.Absent<Integer> ? fallback : line;
  }

  /** Whether ports of that kind run at 1 Gb/s or more; empty where the name does not tell. */
  private static Optional<Boolean> isFast(PortKind kind) {
    return switch (kind) {
      case FAST_ETHERNET -> Optional.of(false);
      case NUMBERED, ETHERNET, SWITCH_PORT, PORT_CHANNEL, LAG -> Optional.empty();
      default -> Optional.of(true);
    };
  }
}
