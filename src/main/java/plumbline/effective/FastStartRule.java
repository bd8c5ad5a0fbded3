package plumbline.effective;

import java.util.List;
import plumbline.setting.Effect;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand.FastStart;

/**
 * Decides edge fast-start: the port line over the global default, in the light of the port's mode.
 *
 * <p>On a port whose mode is left to negotiation a line without the trunk keyword stays open: it
 * works if the port ends as an access port (as it does towards a host) and not if it trunks. A line
 * with the trunk keyword works either way.
 */
final class FastStartRule {
  private static final String NEGOTIATED =
      "the mode is left to negotiation and fast-start without the trunk keyword stops on a trunk";

  private final Globals globals;

  FastStartRule(Globals globals) {
    this.globals = globals;
  }

  /** Puts the setting; needs the mode. */
  void apply(PortDraft port) {
    Setting<PortMode> mode = port.get(Keys.MODE);
    Setting<Effect> byDefault = byDefault(mode);
    port.put(
        Keys.FAST_START,
        port.lines()
            .last(Matter.FAST_START, FastStart.class)
            .decide(last -> said(last, mode, byDefault), () -> byDefault));
  }

  private Setting<Effect> said(
      LastWord.Said<FastStart> last, Setting<PortMode> mode, Setting<Effect> byDefault) {
    return switch (last.statement().form()) {
      case SET -> set(last, mode);
      case NO -> negated(last, mode, byDefault);
      case DEFAULT -> last.backTo(byDefault);
    };
  }

  private Setting<Effect> set(LastWord.Said<FastStart> last, Setting<PortMode> mode) {
    return switch (last.command().kind().orElse(FastStart.Kind.EDGE)) {
      case NETWORK -> last.known(Effect.OFF).because(List.of(PortSettings.NETWORK));
      case NORMAL, DISABLE -> last.known(Effect.OFF);
      case EDGE_TRUNK -> onAnyBridgingPort(last.known(Effect.ON), mode);
      case EDGE -> {
        if (last.command().reachesTrunks()) {
          yield onAnyBridgingPort(last.known(Effect.ON), mode);
        }
        if (globals.dialect().defaults().edgeReachesTrunks()) {
          yield onAnyBridgingPort(
              last.known(Effect.ON).because(List.of(globals.because("fast-start reaches trunks"))),
              mode);
        }
        yield unlessTrunking(last.known(Effect.ON), mode, Effect.WITHOUT_EFFECT);
      }
    };
  }

  /** A plain {@code no} leaves the global default in force in some releases and not in others. */
  private Setting<Effect> negated(
      LastWord.Said<FastStart> last, Setting<PortMode> mode, Setting<Effect> byDefault) {
    if (byDefault.is(Effect.OFF)) {
      return last.backTo(byDefault);
    }
    if (globals.fastStart().value().filter(FastStartRule::isEdge).isEmpty()) {
      return last.backTo(byDefault);
    }
    return new Setting.Unknown<Effect>(
            "releases differ on whether a plain `no` overrides the global fast-start default",
            List.of(last.statement().evidence()))
        .because(globals.fastStart().evidence())
        .because(mode.evidence());
  }

  /** What the global default makes of a port: it reaches only ports that are not trunking. */
  private Setting<Effect> byDefault(Setting<PortMode> mode) {
    Setting<FastStart.Kind> global = globals.fastStart();
    if (global.is(FastStart.Kind.NETWORK) && !mode.is(PortMode.ROUTED)) {
      return Setting.<Effect>known(Effect.OFF)
          .because(global.evidence())
          .because(List.of(PortSettings.NETWORK));
    }
    if (mode.is(PortMode.TRUNK) || mode.is(PortMode.ROUTED)) {
      Evidence fact =
          new Evidence.Default("the global fast-start default does not reach " + modeWords(mode));
      return global.value().filter(FastStartRule::isEdge).isPresent() || !global.isDecided()
          ? Setting.known(Effect.OFF, fact).because(mode.evidence()).because(global.evidence())
          : Setting.<Effect>known(Effect.OFF).because(global.evidence());
    }
    if (!global.isDecided()) {
      return global.map(kind -> Effect.ON);
    }
    if (global.value().filter(FastStartRule::isEdge).isEmpty()) {
      return Setting.<Effect>known(Effect.OFF).because(global.evidence());
    }
    return unlessTrunking(
        Setting.<Effect>known(Effect.ON).because(global.evidence()), mode, Effect.OFF);
  }

  private static String modeWords(Setting<PortMode> mode) {
    return mode.is(PortMode.TRUNK) ? "a trunk" : "a routed port";
  }

  private static boolean isEdge(FastStart.Kind kind) {
    return kind == FastStart.Kind.EDGE || kind == FastStart.Kind.EDGE_TRUNK;
  }

  private static Setting<Effect> onAnyBridgingPort(Setting<Effect> on, Setting<PortMode> mode) {
    return mode.is(PortMode.ROUTED)
        ? on.map(effect -> Effect.WITHOUT_EFFECT).because(mode.evidence())
        : on;
  }

  private static Setting<Effect> unlessTrunking(
      Setting<Effect> on, Setting<PortMode> mode, Effect onTrunk) {
    if (mode.value().isEmpty()) {
      return new Setting.Unknown<Effect>(
              "the mode cannot be told: " + mode.reason().orElse("none is set"), on.evidence())
          .because(mode.evidence());
    }
    Setting<Effect> setting =
        switch (mode.value().get()) {
          case ACCESS -> on;
          case TRUNK -> on.map(effect -> onTrunk);
          case ROUTED -> on.map(effect -> Effect.WITHOUT_EFFECT);
          case NEGOTIATED -> new Setting.Unknown<>(NEGOTIATED, on.evidence());
          case OTHER ->
              new Setting.Unknown<>(
                  "the port's mode is not modelled, and fast-start depends on it", on.evidence());
        };
    return setting.because(mode.evidence());
  }
}
