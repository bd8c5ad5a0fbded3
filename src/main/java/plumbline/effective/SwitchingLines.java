package plumbline.effective;

import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.Statement;

/** Says which lines of a port are about switching. */
final class SwitchingLines {
  private SwitchingLines() {}

  /** Whether a line sets something about switching: mode, VLANs, bundle. */
  static boolean anyFor(Lines lines) {
    return lines.statements().stream()
        .filter(statement -> statement.form() == Form.SET)
        .map(Statement::command)
        .anyMatch(
            command ->
                isVlanLine(command)
                    || command instanceof PortCommand.Switched
                    || command instanceof PortCommand.Pruning
                    || command instanceof PortCommand.ChannelGroup);
  }

  /** Whether a port has lines about its mode and VLANs, which a bundle's must equal. */
  static boolean anyOwn(Lines lines) {
    return lines.statements().stream().anyMatch(SwitchingLines::isOwn);
  }

  /** Whether a line that is not modelled may change what a trunk carries. */
  static boolean mayReachTrunks(PortCommand.Unmodelled line) {
    return !line.keywords().startsWith("switchport access ")
        && !line.keywords().startsWith("switchport voice ");
  }

  private static boolean isOwn(Statement statement) {
    Command command = statement.command();
    return isVlanLine(command)
        || (command instanceof PortCommand.Switched && statement.form() == Form.NO)
        || (command instanceof Command.Unknown unknown && mayBegin(unknown, "switchport"));
  }

  /** Whether an unknown statement begins with that keyword or may have been meant to. */
  static boolean mayBegin(Command.Unknown unknown, String keyword) {
    return unknown.variants().stream()
        .anyMatch(words -> !words.isEmpty() && words.get(0).equals(keyword));
  }

  private static boolean isVlanLine(Command command) {
    return command instanceof PortCommand.Mode
        || command instanceof PortCommand.Nonegotiate
        || command instanceof PortCommand.AccessVlan
        || command instanceof PortCommand.Voice
        || command instanceof PortCommand.NativeVlan
        || command instanceof PortCommand.NativeTagging
        || command instanceof PortCommand.Allowed
        || command instanceof PortCommand.Unmodelled;
  }
}
