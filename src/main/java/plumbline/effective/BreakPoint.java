package plumbline.effective;

import plumbline.port.PortNames.Reading;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;

/** Where a text breaks off, and what stands before that. */
final class BreakPoint {
  private final SwitchText text;

  BreakPoint(SwitchText text) {
    this.text = text;
  }

  /** Says whether a line stands at or behind the break. */
  boolean holds(int line) {
    return text.truncation().filter(cut -> line >= cut.line()).isPresent();
  }

  /** A text that ends with {@code end} lacks bytes somewhere before: that may be anywhere. */
  boolean isBelowPort() {
    return text.truncation().isPresent()
        && !lacksPartBeforeEnd()
        && text.statements().stream()
            .takeWhile(statement -> !holds(statement.line()))
            .anyMatch(BreakPoint::opensCabledPort);
  }

  private boolean lacksPartBeforeEnd() {
    return text.statements().stream()
            .anyMatch(statement -> statement.command() instanceof Command.End)
        && text.statements().stream()
            .filter(statement -> holds(statement.line()))
            .findFirst()
            .filter(BreakPoint::isBanner)
            .isEmpty();
  }

  /** Says whether a statement is a banner. */
  static boolean isBanner(Statement statement) {
    return statement.command() instanceof Command.Layout layout
        && layout.kind() == Command.Layout.Kind.BANNER;
  }

  private static boolean opensCabledPort(Statement statement) {
    return statement.form() == Form.SET
        && statement.command() instanceof SwitchCommand.Interface header
        && header.ports() instanceof Reading.Ports named
        && named.names().stream().anyMatch(ModeRule::bridges);
  }
}
