package plumbline.effective;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;

/**
 * Decides what a port does with frames: switched or routed first, then the mode of a switched port.
 */
final class ModeRule {
  private static final String ROUTED_BY_DEFAULT =
      "ports are routed: `switchport` lines stand and no `no switchport`";

  private final Globals globals;
  private final Lines others;
  private final Optional<Evidence> bareSwitched;

  /**
   * Prepares the rule for one switch.
   *
   * @param globals what holds for all ports
   * @param others the lines outside ports
   * @param ports the lines of each port: {@code switchport} alone in one, and {@code no switchport}
   *     in none, means that ports are routed by default
   */
  ModeRule(Globals globals, Lines others, Map<PortName, Lines> ports) {
    this.globals = globals;
    this.others = others;
    List<Statement> switched =
        ports.values().stream()
            .flatMap(lines -> lines.statements().stream())
            .filter(statement -> statement.command() instanceof PortCommand.Switched)
            .toList();
    this.bareSwitched =
        switched.stream().allMatch(statement -> statement.form() == Form.SET)
            ? switched.stream().map(Statement::evidence).map(Evidence.class::cast).findFirst()
            : Optional.empty();
  }

  /** The mode of one port. */
  Setting<PortMode> mode(PortName port, Lines lines) {
    if (!bridges(port)) {
      return Setting.known(PortMode.ROUTED, new Evidence.Default(kindFact(port)));
    }
    Setting<Boolean> switched = switched(lines);
    if (switched.is(false)) {
      return switched.map(no -> PortMode.ROUTED);
    }
    if (!switched.isDecided()) {
      return switched.map(yes -> PortMode.OTHER);
    }
    Setting<PortMode> fallback =
        globals
            .dialect()
            .fact(globals.dialect().defaultMode(), "mode " + globals.dialect().defaultMode());
    return lastMode(lines)
        .decide(
            last -> modeOf(last).map(last::known).orElseGet(() -> last.backTo(fallback)),
            () -> fallback);
  }

  /** Whether ports of that kind bridge frames between VLANs at all. */
  static boolean bridges(PortName port) {
    return port.sub().isEmpty()
        && (port.kind().isBundle() || port.kind().isPhysical())
        && port.kind() != PortKind.MANAGEMENT
        && port.kind() != PortKind.SERIAL;
  }

  private static String kindFact(PortName port) {
    return port.sub().isPresent()
        ? "a sub-interface is routed"
        : "a " + port.kind().fullName() + " interface is routed";
  }

  private Setting<Boolean> switched(Lines lines) {
    LastWord<PortCommand.Switched> own = lines.last(Matter.SWITCHED, PortCommand.Switched.class);
    if (own instanceof LastWord.Open<PortCommand.Switched> open && open.silence()) {
      return withoutLine(lines, Optional.of(open.why()));
    }
    return own.flag(withoutLine(lines, Optional.empty()));
  }

  /** Whether a port is switched that does not say so by a line of its own. */
  private Setting<Boolean> withoutLine(Lines lines, Optional<String> silence) {
    LastWord<Command> mode = lastMode(lines);
    boolean saysMode = mode instanceof LastWord.Said<Command>;
    Optional<Statement> address = saysMode ? Optional.empty() : addressLine(lines);
    Setting<Boolean> global = globals.switched();
    if (address.isPresent()) {
      return Setting.known(false, address.get().evidence());
    }
    if (!saysMode && silence.isPresent()) {
      return new Setting.Unknown<>(silence.get(), inheritedLines(lines));
    }
    if (saysMode && lines.inherited().isPresent()) {
      return underInheritance(lines, mode, global);
    }
    if (global.value().isPresent() || (!global.isDecided() && others.open().isEmpty())) {
      return global;
    }
    if (saysMode) {
      return bareSwitched.isPresent() ? doubtfulMode(lines) : lineOf(mode, true);
    }
    if (!global.isDecided()) {
      return global;
    }
    return bareSwitched
        .map(line -> Setting.known(false, line, new Evidence.Default(ROUTED_BY_DEFAULT)))
        .orElseGet(() -> globals.dialect().fact(true, "ports are switched"));
  }

  /** A mode line of the port's own; what switches the port at all may stand elsewhere. */
  private Setting<Boolean> underInheritance(
      Lines lines, LastWord<Command> mode, Setting<Boolean> global) {
    Setting<Boolean> own = lineOf(mode, true);
    return global.is(false) || bareSwitched.isPresent()
        ? new Setting.Unknown<Boolean>(lines.inherited().orElseThrow().why(), own.evidence())
            .because(inheritedLines(lines))
        : own;
  }

  private static List<Evidence> inheritedLines(Lines lines) {
    return lines.inherited().map(Inheritance::evidence).orElse(List.of());
  }

  private static Setting<Boolean> doubtfulMode(Lines lines) {
    return new Setting.Unknown<>(
        "a mode line stands without `switchport`, in a text where that line seems to be needed",
        lineOf(lastMode(lines), true).evidence());
  }

  private static <T> Setting<T> lineOf(LastWord<Command> word, T value) {
    return word.decide(last -> last.known(value), () -> Setting.known(value));
  }

  /** A line about an address is refused on switched ports, so its port is none. */
  private static Optional<Statement> addressLine(Lines lines) {
    if (SwitchingLines.anyOwn(lines) || lines.doubt().isPresent()) {
      return Optional.empty();
    }
    return lines.statements().stream()
        .filter(statement -> statement.command() instanceof PortCommand.Address)
        .filter(statement -> lines.doubtOf(statement).isEmpty())
        .filter(statement -> statement.form() == Form.SET || lines.silence().isEmpty())
        .findFirst();
  }

  /** The line that decides the mode; spellings that imply a mode count until they are undone. */
  private static LastWord<Command> lastMode(Lines lines) {
    Map<Class<?>, Statement> standing = new LinkedHashMap<>();
    for (Statement statement : lines.statements()) {
      if (saysMode(statement.command())) {
        standing.remove(statement.command().getClass());
        if (statement.form() == Form.SET) {
          standing.put(statement.command().getClass(), statement);
        }
      }
    }
    return lines.last(
        Matter.MODE,
        Command.class,
        statement ->
            standing.isEmpty()
                ? saysMode(statement.command())
                : standing.values().stream().anyMatch(one -> one.equals(statement)));
  }

  private static boolean saysMode(Command command) {
    return command instanceof PortCommand.Mode
        || (command instanceof PortCommand.AccessVlan access && access.setsMode())
        || (command instanceof PortCommand.NativeVlan vlan && vlan.setsMode())
        || (command instanceof PortCommand.Allowed allowed && allowed.setsMode());
  }

  private static Optional<PortMode> modeOf(LastWord.Said<Command> last) {
    if (!last.sets()) {
      return Optional.empty();
    }
    if (last.command() instanceof PortCommand.Mode mode) {
      return mode.kind().map(ModeRule::modeOf);
    }
    return Optional.of(
        last.command() instanceof PortCommand.AccessVlan ? PortMode.ACCESS : PortMode.TRUNK);
  }

  private static PortMode modeOf(PortCommand.Mode.Kind kind) {
    return switch (kind) {
      case ACCESS -> PortMode.ACCESS;
      case TRUNK -> PortMode.TRUNK;
      case DYNAMIC_AUTO, DYNAMIC_DESIRABLE -> PortMode.NEGOTIATED;
      case OTHER -> PortMode.OTHER;
    };
  }

  /** Whether a port of that mode asks for a trunk; the default differs between releases. */
  Setting<Boolean> asks(Setting<PortMode> mode, Lines lines) {
    if (!mode.isDecided()) {
      return mode.map(unknown -> true);
    }
    if (!mode.is(PortMode.NEGOTIATED)) {
      return new Setting.Absent<>(mode.evidence());
    }
    Setting<Boolean> fallback = globals.dialect().differs("asking for a trunk");
    return lastMode(lines)
        .decide(
            last ->
                last.sets() && last.command() instanceof PortCommand.Mode line
                    ? last.known(
                        line.kind()
                            .filter(PortCommand.Mode.Kind.DYNAMIC_DESIRABLE::equals)
                            .isPresent())
                    : last.backTo(fallback),
            () -> fallback);
  }

  /** Whether trunk negotiation is open on a port of that mode. */
  Setting<Boolean> negotiate(Setting<PortMode> mode, Lines lines) {
    if (mode.value().isEmpty()) {
      return mode.map(unknown -> true);
    }
    if (mode.is(PortMode.ROUTED) || mode.is(PortMode.ACCESS)) {
      return mode.map(closed -> false);
    }
    if (mode.is(PortMode.OTHER)) {
      Setting<Boolean> open =
          new Setting.Unknown<>(
              "what a port in this mode negotiates is not modelled", mode.evidence());
      LastWord<PortCommand.Nonegotiate> closing =
          lines.last(Matter.NEGOTIATE, PortCommand.Nonegotiate.class);
      return closing.decide(
          line -> line.sets() ? line.known(false) : line.backTo(open), () -> open);
    }
    boolean negotiates = globals.dialect().defaults().negotiates();
    Setting<Boolean> silent =
        mode.is(PortMode.NEGOTIATED)
            ? mode.map(open -> true)
            : globals
                .dialect()
                .fact(negotiates, negotiates ? "trunk negotiation open" : "no trunk negotiation");
    LastWord<PortCommand.Nonegotiate> last =
        lines.last(Matter.NEGOTIATE, PortCommand.Nonegotiate.class);
    if (!negotiates
        && last instanceof LastWord.Open<PortCommand.Nonegotiate> open
        && open.silence()) {
      return silent;
    }
    return last.decide(
        line ->
            switch (line.statement().form()) {
              case SET -> line.known(false);
              case NO -> negotiates ? line.known(true) : line.backTo(silent);
              case DEFAULT -> line.backTo(silent);
            },
        () -> silent.because(mode.evidence()));
  }
}
