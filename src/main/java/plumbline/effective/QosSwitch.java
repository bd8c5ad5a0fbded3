package plumbline.effective;

import java.util.Collection;
import java.util.List;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.setting.Setting;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;

/**
 * Decides which marking a port trusts. In the families that spell it {@code mls qos trust} the line
 * has no effect while QoS is off for the switch, and QoS is off without a line. Only in old ones,
 * whose ports are of 100 Mb/s, it may be always on (common practice, no source).
 */
final class QosSwitch {
  private final Globals globals;
  private final boolean mayBeAlwaysOn;

  /**
   * The rule for the ports of one switch.
   *
   * @param ports the ports that its text opens
   */
  QosSwitch(Globals globals, Collection<PortName> ports) {
    this.globals = globals;
    this.mayBeAlwaysOn = ports.stream().anyMatch(port -> port.kind() == PortKind.FAST_ETHERNET);
  }

  /** Whether QoS is on where a port trusts a marking. */
  private Setting<Boolean> isOn() {
    if (!(globals.qos() instanceof Setting.Absent<Boolean>)) {
      return globals.qos();
    }
    return mayBeAlwaysOn
        ? Setting.unknown("no line turns QoS on, and switches with such ports differ in that")
        : Setting.known(false, PortSettings.QOS_OFF);
  }

  /** What the port trusts; {@code none} where that is nothing. */
  Setting<String> trust(Lines lines) {
    Setting<String> none = globals.dialect().fact("none", "no trust line");
    LastWord<PortCommand.QosTrust> last = lines.last(Matter.TRUST, PortCommand.QosTrust.class);
    Setting<String> trust = last.operand(PortCommand.QosTrust::marking, none);
    boolean hangsOnSwitch =
        globals.dialect() == Dialect.CAMPUS
            && last instanceof LastWord.Said<PortCommand.QosTrust> said
            && said.sets()
            && said.command().needsEnable()
            && said.command().marking().isPresent();
    if (!hangsOnSwitch) {
      return last instanceof LastWord.Silent<PortCommand.QosTrust>
          ? unlessAutomatic(lines, trust)
          : trust;
    }
    Setting<Boolean> on = isOn();
    if (!on.isDecided()) {
      return new Setting.Unknown<String>(on.reason().orElseThrow(), trust.evidence())
          .because(on.evidence());
    }
    return on.is(true)
        ? trust.because(on.evidence())
        : trust
            .map(marking -> "none")
            .because(on.evidence())
            .because(List.of(PortSettings.QOS_OFF));
  }

  /** {@code auto qos} stands for lines that the switch writes itself, trust among them. */
  private static Setting<String> unlessAutomatic(Lines lines, Setting<String> trust) {
    return lines.statements().stream()
        .filter(statement -> statement.form() == Form.SET)
        .filter(
            statement ->
                statement.command() instanceof Command.Harmless line
                    && line.keyword().equals("auto"))
        .findFirst()
        .map(
            statement ->
                Setting.<String>unknown(
                    "`auto qos` stands for lines that are not in this text", statement.evidence()))
        .orElse(trust);
  }
}
