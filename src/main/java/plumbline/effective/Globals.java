package plumbline.effective;

import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand.FastStart;
import plumbline.statement.SwitchCommand;

/**
 * What the lines outside ports say for all ports together.
 *
 * @param dialect the table of defaults
 * @param nativeTagging whether every trunk tags its native VLAN
 * @param fastStart the global fast-start default; absent where there is none
 * @param bpduGuard the global BPDU-guard default
 * @param bpduFilter the global BPDU-filter default
 * @param loopGuard the global loop-guard default
 * @param udld the global default of link detection, of fibre ports
 * @param systemMtu frame payload of all ports; absent where no line sets one
 * @param jumboMtu frame payload of ports of 1 Gb/s and more; absent where no line sets one
 * @param routedMtu size of routed packets; absent where no line sets one
 * @param switched whether ports are switched without a line; absent where no line says
 * @param shut whether ports are shut without a line; absent where no line says
 * @param qos whether a line turns QoS on or off; absent where none does
 */
record Globals(
    Dialect dialect,
    Setting<Boolean> nativeTagging,
    Setting<FastStart.Kind> fastStart,
    Setting<Boolean> bpduGuard,
    Setting<Boolean> bpduFilter,
    Setting<Boolean> loopGuard,
    Setting<Boolean> udld,
    Setting<Integer> systemMtu,
    Setting<Integer> jumboMtu,
    Setting<Integer> routedMtu,
    Setting<Boolean> switched,
    Setting<Boolean> shut,
    Setting<Boolean> qos) {
  /** Reads them from the lines outside ports. */
  static Globals of(Lines lines, Dialect dialect) {
    return new Globals(
        dialect,
        lines
            .last(Matter.NATIVE_TAG_DEFAULT, SwitchCommand.NativeTaggingDefault.class)
            .flag(dialect.fact(false, "native VLAN untagged")),
        fastStart(lines, dialect),
        lines
            .last(Matter.GUARD_DEFAULT, SwitchCommand.BpduGuardDefault.class)
            .flag(dialect.fact(false, "no BPDU guard")),
        lines
            .last(Matter.FILTER_DEFAULT, SwitchCommand.BpduFilterDefault.class)
            .flag(dialect.fact(false, "no BPDU filter")),
        lines
            .last(Matter.LOOP_DEFAULT, SwitchCommand.LoopGuardDefault.class)
            .flag(dialect.fact(false, "no loop guard")),
        lines
            .last(Matter.UDLD_DEFAULT, SwitchCommand.UdldDefault.class)
            .flag(dialect.fact(false, "no unidirectional-link detection")),
        mtu(lines, SwitchCommand.SystemMtu.Kind.ALL),
        mtu(lines, SwitchCommand.SystemMtu.Kind.JUMBO),
        mtu(lines, SwitchCommand.SystemMtu.Kind.ROUTING),
        systemDefaults(lines, dialect)
            .last(Matter.SWITCHED_DEFAULT, SwitchCommand.SwitchedDefault.class)
            .flag(Setting.absent()),
        systemDefaults(lines, dialect)
            .last(Matter.SHUT_DEFAULT, SwitchCommand.ShutDefault.class)
            .flag(Setting.absent()),
        lines.last(Matter.QOS, SwitchCommand.QosEnable.class).flag(Setting.absent()));
  }

  /** A text that breaks off leaves nothing open that its dialect has no line for. */
  private static Lines systemDefaults(Lines lines, Dialect dialect) {
    return dialect.hasSystemDefaults() || lines.isScript()
        ? lines
        : lines.heard(dialect.because("no line for all ports switches or shuts them"));
  }

  private static Setting<FastStart.Kind> fastStart(Lines lines, Dialect dialect) {
    Setting<FastStart.Kind> none = dialect.nothing("no fast-start");
    return lines
        .last(Matter.FAST_START_DEFAULT, SwitchCommand.FastStartDefault.class)
        .decide(
            last -> last.sets() ? last.known(last.command().kind()) : last.backTo(none),
            () -> none);
  }

  private static Setting<Integer> mtu(Lines lines, SwitchCommand.SystemMtu.Kind kind) {
    return lines
        .last(
            Matter.SYSTEM_MTU,
            SwitchCommand.SystemMtu.class,
            line -> line.command() instanceof SwitchCommand.SystemMtu size && size.kind() == kind)
        .operand(SwitchCommand.SystemMtu::octets, Setting.absent());
  }

  /** The name of a default of the dialect as evidence. */
  Evidence because(String fact) {
    return dialect.because(fact);
  }
}
