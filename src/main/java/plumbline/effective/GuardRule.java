package plumbline.effective;

import java.util.List;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand;

/**
 * Decides BPDU guard and filter, root and loop guard and unidirectional-link detection; needs mode
 * and fast-start.
 */
final class GuardRule {
  private final Globals globals;

  GuardRule(Globals globals) {
    this.globals = globals;
  }

  /** Puts the five settings. */
  void apply(PortDraft port) {
    Setting<Effect> filter = filter(port);
    port.put(Keys.BPDU_FILTER, whereBridged(filter, port));
    port.put(Keys.BPDU_GUARD, armed(bpduGuard(port), filter, port));
    port.put(
        Keys.ROOT_GUARD,
        armed(
            guard(
                port,
                PortCommand.Guard.Kind.ROOT,
                globals.dialect().fact(Effect.OFF, "no root guard")),
            filter,
            port));
    port.put(
        Keys.LOOP_GUARD,
        armed(
            guard(port, PortCommand.Guard.Kind.LOOP, globals.loopGuard().map(GuardRule::effect)),
            filter,
            port));
    port.put(Keys.UDLD, udld(port));
  }

  private static Effect effect(boolean on) {
    return on ? Effect.ON : Effect.OFF;
  }

  /**
   * The port's own filter: only that one stops BPDUs both ways for good. The global default ends
   * when a BPDU is heard, so it is evidence for {@link Effect#OFF}, not a filter in this sense. A
   * port whose spanning tree is turned off drops BPDUs likewise.
   */
  private Setting<Effect> filter(PortDraft port) {
    LastWord<PortCommand.TreeOnPort> tree =
        port.lines().last(Matter.TREE, PortCommand.TreeOnPort.class);
    if (tree instanceof LastWord.Said<PortCommand.TreeOnPort> said && said.negates()) {
      return said.known(Effect.ON);
    }
    Setting<Effect> fallback = filterByDefault(port.get(Keys.FAST_START));
    return port.lines()
        .last(Matter.BPDU_FILTER, PortCommand.BpduFilter.class)
        .operand(PortCommand.BpduFilter::enable, fallback.map(effect -> effect == Effect.ON))
        .map(GuardRule::effect);
  }

  private Setting<Effect> filterByDefault(Setting<Effect> fastStart) {
    Setting<Boolean> global = globals.bpduFilter();
    if (global.is(false)) {
      return global.map(off -> Effect.OFF);
    }
    Setting<Effect> off = Setting.<Effect>known(Effect.OFF).because(global.evidence());
    Evidence fact =
        fastStart.is(Effect.OFF) || fastStart.is(Effect.WITHOUT_EFFECT)
            ? new Evidence.Default("the global BPDU filter does not reach ports without fast-start")
            : new Evidence.Default("the global BPDU filter ends when a BPDU is heard");
    return off.because(List.of(fact));
  }

  private Setting<Effect> bpduGuard(PortDraft port) {
    return port.lines()
        .last(Matter.BPDU_GUARD, PortCommand.BpduGuard.class)
        .decide(
            last -> {
              boolean decided = last.sets() && last.command().enable().isPresent();
              return decided
                  ? last.known(effect(last.command().enable().get()))
                  : last.backTo(guardByDefault(port));
            },
            () -> guardByDefault(port));
  }

  /** The global default reaches only ports whose fast-start is in effect. */
  private Setting<Effect> guardByDefault(PortDraft port) {
    Setting<Boolean> global = globals.bpduGuard();
    Setting<Effect> fastStart = port.get(Keys.FAST_START);
    if (global.is(false)) {
      return global.map(off -> Effect.OFF);
    }
    if (fastStart.is(Effect.OFF) || fastStart.is(Effect.WITHOUT_EFFECT)) {
      return Setting.known(
              Effect.OFF,
              new Evidence.Default(
                  "the global BPDU guard reaches only ports whose fast-start is in effect"))
          .because(global.evidence())
          .because(fastStart.evidence());
    }
    if (!global.isDecided()) {
      return global.map(on -> Effect.ON);
    }
    if (!fastStart.isDecided()) {
      return new Setting.Unknown<Effect>(
              "the global BPDU guard follows fast-start: " + fastStart.reason().orElse(""),
              global.evidence())
          .because(fastStart.evidence());
    }
    return Setting.<Effect>known(Effect.ON)
        .because(global.evidence())
        .because(fastStart.evidence());
  }

  private Setting<Effect> guard(
      PortDraft port, PortCommand.Guard.Kind kind, Setting<Effect> fallback) {
    return port.lines()
        .last(Matter.GUARD, PortCommand.Guard.class)
        .decide(
            last ->
                last.sets() && last.command().kind().isPresent()
                    ? last.known(effect(last.command().kind().get() == kind))
                    : last.backTo(fallback),
            () -> fallback);
  }

  /**
   * A guard that a filter on the port leaves without effect: no BPDU ever reaches it. That a script
   * says nothing of a filter is not held against a guard that it turns on.
   */
  private Setting<Effect> armed(Setting<Effect> guard, Setting<Effect> filter, PortDraft port) {
    Setting<Effect> bridged = whereBridged(guard, port);
    if (!bridged.is(Effect.ON)) {
      return bridged;
    }
    if (filter.is(Effect.ON)) {
      return bridged.map(on -> Effect.WITHOUT_EFFECT).because(filter.evidence());
    }
    if (!filter.isDecided() && !isSilentOnFilter(port)) {
      return new Setting.Unknown<Effect>(
              "a BPDU filter on the port would disarm it: " + filter.reason().orElse(""),
              bridged.evidence())
          .because(filter.evidence());
    }
    return bridged;
  }

  private static boolean isSilentOnFilter(PortDraft port) {
    return port.lines().last(Matter.BPDU_FILTER, PortCommand.BpduFilter.class)
            instanceof LastWord.Open<PortCommand.BpduFilter> open
        && open.silence()
        && port.lines().inherited().isEmpty();
  }

  private static Setting<Effect> whereBridged(Setting<Effect> guard, PortDraft port) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    return mode.is(PortMode.ROUTED) && guard.is(Effect.ON)
        ? guard.map(on -> Effect.WITHOUT_EFFECT).because(mode.evidence())
        : guard;
  }

  private Setting<Effect> udld(PortDraft port) {
    Setting<Effect> fallback =
        globals.udld().is(true)
            ? new Setting.Unknown<>(
                "the global default reaches fibre ports only, and the text does not tell the medium",
                globals.udld().evidence())
            : globals.udld().map(GuardRule::effect);
    return port.lines()
        .last(Matter.UDLD, PortCommand.Udld.class)
        .decide(
            last ->
                last.sets() ? last.known(effect(last.command().enable())) : last.backTo(fallback),
            () -> fallback);
  }
}
