package plumbline.syntax;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import plumbline.statement.Command;
import plumbline.statement.Statement;
import plumbline.statement.SwitchText;

/** Texts of statements for tests: one line each, place, context, quote. */
final class Shown {
  private Shown() {}

  /** All statements of one switch. */
  static String all(SwitchText text) {
    return text.statements().stream().map(Shown::one).collect(Collectors.joining("\n"));
  }

  /** The statements that are no layout, with their places. */
  static String told(SwitchText text) {
    return text.statements().stream()
        .filter(statement -> !(statement.command() instanceof Command.Layout))
        .map(Shown::one)
        .collect(Collectors.joining("\n"));
  }

  /** Form and command of the statements that are no layout, without their places. */
  static List<String> meanings(SwitchText text) {
    return text.statements().stream()
        .filter(statement -> !(statement.command() instanceof Command.Layout))
        .map(s -> s.context() + " " + s.form() + " " + s.command())
        .toList();
  }

  private static String one(Statement statement) {
    String lines =
        statement.line() == statement.lastLine()
            ? "" + statement.line()
            : statement.line() + "-" + statement.lastLine();
    return lines + ":" + statement.column() + " " + statement.context() + " " + what(statement);
  }

  private static String what(Statement statement) {
    Command command = statement.command();
    if (command instanceof Command.Layout layout) {
      return "(" + layout.kind().toString().toLowerCase(Locale.ROOT) + ")";
    }
    if (command instanceof Command.Unknown unknown) {
      return ("? " + unknown.firstWord() + " " + String.join(" ", unknown.understood())).strip();
    }
    return statement.meaning().quote().isEmpty()
        ? "(" + command + ")"
        : statement.meaning().quote();
  }
}
