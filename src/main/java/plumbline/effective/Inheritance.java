package plumbline.effective;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    Map<String, Statement> standing = new LinkedHashMap<>();
    for (Statement statement : lines) {
      if (statement.command() instanceof Inherit inherit) {
        take(statement, inherit, standing);
      } else if (isGarbled(statement.command())) {
        standing.putIfAbsent("", statement);
      }
    }
    if (standing.isEmpty()) {
      return Optional.empty();
    }
    List<String> clauses = new ArrayList<>();
    standing.forEach(
        (what, statement) ->
            clauses.add(
                what.isEmpty()
                    ? "line " + statement.line() + " is not understood"
                    : "the port takes lines from " + what));
    List<Evidence> evidence =
        standing.values().stream()
            .map(statement -> (Evidence) statement.evidence())
            .distinct()
            .toList();
    return Optional.of(new Inheritance(String.join("; ", clauses), evidence));
  }

  private static void take(Statement statement, Inherit inherit, Map<String, Statement> standing) {
    String keyword = inherit.keyword() + " ";
    if (statement.form() == Form.SET) {
      inherit.names().forEach(name -> standing.put(keyword + name, statement));
    } else if (inherit.names().isEmpty()) {
      standing.keySet().removeIf(what -> what.startsWith(keyword));
    } else {
      inherit.names().forEach(name -> standing.remove(keyword + name));
    }
  }

  private static boolean isGarbled(Command command) {
    return command instanceof Command.Unknown unknown
        && !unknown.understood().isEmpty()
        && HOLDERS.contains(unknown.understood().get(0));
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
