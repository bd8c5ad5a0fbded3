package plumbline.effective;

import java.util.List;
import java.util.Map;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Keys;
import plumbline.setting.PortMode;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;

/**
 * Decides whether a port is shut: its own line, a system default line, or the dialect. What shuts
 * ports for lack of a line shuts physical ports only: where it does, saved configs open those by
 * {@code no shutdown} and their bundles, which are up, have no such line (common practice, no
 * source).
 */
final class ShutRule {
  private final Globals globals;
  private final List<Statement> shutLines;

  ShutRule(Globals globals, Map<PortName, Lines> ports) {
    this.globals = globals;
    this.shutLines =
        ports.entrySet().stream()
            .filter(port -> ModeRule.bridges(port.getKey()))
            .flatMap(port -> port.getValue().statements().stream())
            .filter(statement -> statement.command() instanceof PortCommand.Shutdown)
            .toList();
  }

  /** Puts the setting; needs the mode. */
  void apply(PortDraft port) {
    Setting<Boolean> fallback = withoutLine(port.name(), port.get(Keys.MODE));
    port.put(Keys.SHUT, port.lines().last(Matter.SHUT, PortCommand.Shutdown.class).flag(fallback));
  }

  private Setting<Boolean> withoutLine(PortName port, Setting<PortMode> mode) {
    Dialect.Shut table = globals.dialect().defaults().shut();
    if (port.kind() == PortKind.VLAN) {
      return byTable(table.vlan(), "VLAN interfaces");
    }
    if (!ModeRule.bridges(port)) {
      return globals.dialect().fact(false, "this kind of interface is not shut");
    }
    if (port.kind().isBundle() && table.switched() == Truth.NO) {
      return globals
          .dialect()
          .fact(
              false,
              "bundles are not shut; lines and defaults that shut ports reach physical ones");
    }
    if (mode.is(PortMode.ROUTED)) {
      return byTable(table.routed(), "routed ports");
    }
    if (globals.shut().value().isPresent() || !globals.shut().isDecided()) {
      return globals.shut();
    }
    return byTable(table.switched(), "ports");
  }

  private Setting<Boolean> byTable(Truth shut, String what) {
    if (shut == Truth.UNKNOWN) {
      return byHabit(what);
    }
    boolean yes = shut == Truth.YES;
    return globals.dialect().fact(yes, what + (yes ? " are shut" : " are not shut"));
  }

  /**
   * Where the families of a dialect differ, the text tells by what it prints: only what departs
   * from the default.
   */
  private Setting<Boolean> byHabit(String what) {
    boolean shuts = shutLines.stream().anyMatch(line -> line.form() == Form.SET);
    boolean opens = shutLines.stream().anyMatch(line -> line.form() == Form.NO);
    if (shuts == opens) {
      return globals.dialect().differs("the shut state of " + what);
    }
    return Setting.known(
        opens,
        shutLines.get(0).evidence(),
        new Evidence.Default(
            opens
                ? what + " are shut: `no shutdown` lines stand and no `shutdown`"
                : what + " are not shut: `shutdown` lines stand and no `no shutdown`"));
  }
}
