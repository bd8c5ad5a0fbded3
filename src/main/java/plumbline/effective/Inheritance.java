package plumbline.effective;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.setting.Evidence;
import plumbline.statement.Command;
import plumbline.statement.Form;
import plumbline.statement.PortCommand;
import plumbline.statement.PortCommand.Inherit;
import plumbline.statement.Statement;

/**
 * The lines by which a port takes lines that stand elsewhere: what the port has no line of its own
 * for is then no default.
 *
 * @param why a clause, such as {@code the port takes lines from template X}
 * @param evidence the lines, at least one
 */
record Inheritance(String why, List<Evidence> evidence) {
  private static final Set<String> HOLDERS = Set.of("source", "inherit", "profile");

  /** Copies the evidence. */
  Inheritance {
    evidence = List.copyOf(evidence);
  }

  /** What a port's lines take from elsewhere; empty where they take nothing. */
  static Optional<Inheritance> of(List<Statement> lines) {
    List<Statement> standing = new ArrayList<>();
    for (Statement statement : lines) {
      if (statement.command() instanceof Inherit inherit) {
        standing.removeIf(
            earlier -> statement.form() != Form.SET && undoes(inherit, earlier.command()));
        if (statement.form() == Form.SET) {
          standing.add(statement);
        }
      } else if (isGarbled(statement.command())) {
        standing.add(statement);
      }
    }
    if (standing.isEmpty()) {
      return Optional.empty();
    }
    List<String> clauses = standing.stream().map(Inheritance::clause).distinct().toList();
    List<Evidence> evidence = new ArrayList<>();
    standing.forEach(statement -> evidence.add(statement.evidence()));
    return Optional.of(new Inheritance(String.join("; ", clauses), evidence));
  }

  private static boolean undoes(Inherit later, Command earlier) {
    return earlier instanceof Inherit standing
        && standing.keyword().equals(later.keyword())
        && (later.names().isEmpty() || later.names().containsAll(standing.names()));
  }

  private static boolean isGarbled(Command command) {
    return command instanceof Command.Unknown unknown
        && !unknown.understood().isEmpty()
        && HOLDERS.contains(unknown.understood().get(0));
  }

  private static String clause(Statement statement) {
    return statement.command() instanceof Inherit inherit
        ? "the port takes lines from " + inherit.keyword() + " " + String.join(" ", inherit.names())
        : "line " + statement.line() + " is not understood";
  }

  /**
   * Whether a line decides its matter though the port takes lines from elsewhere. One that undoes a
   * line of the port brings the other line to the fore, unless its negation is itself a setting.
   */
  static boolean decides(Statement statement) {
    Command command = statement.command();
    return statement.form() == Form.SET
        || (statement.form() == Form.NO
            && (command instanceof PortCommand.Shutdown
                || command instanceof PortCommand.Switched
                || command instanceof PortCommand.TreeOnPort
                || command instanceof PortCommand.Autostate));
  }
}
