package plumbline.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import plumbline.statement.Command;
import plumbline.statement.Command.Layout;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;

/** Collects the statements of one switch; runs of lines that say nothing become one statement. */
final class StatementList {
  private static final Map<Layout.Kind, Meaning> LAYOUT =
      Arrays.stream(Layout.Kind.values())
          .collect(
              Collectors.toUnmodifiableMap(
                  kind -> kind, kind -> new Meaning(Form.SET, new Layout(kind), "")));

  private final Lines lines;
  private final List<Statement> statements = new ArrayList<>();

  StatementList(Lines lines) {
    this.lines = lines;
  }

  /** Adds a line that is no statement; lines are counted from 0. */
  void layout(Layout.Kind kind, Context context, int line) {
    extend(LAYOUT.get(kind), context, line, 1);
  }

  /** Adds a line of a block that is not read. */
  void unread(Meaning meaning, int line, int column) {
    extend(meaning, Context.OTHER, line, column);
  }

  private void extend(Meaning meaning, Context context, int line, int column) {
    int number = lines.number(line);
    if (!statements.isEmpty()) {
      Statement last = last();
      if (last.meaning().equals(meaning) && last.context() == context) {
        replaceLast(new Statement(meaning, context, last.line(), number, last.column()));
        return;
      }
    }
    statements.add(new Statement(meaning, context, number, number, column));
  }

  /** Adds a statement. */
  void add(Meaning meaning, Context context, int line, int column) {
    int number = lines.number(line);
    statements.add(new Statement(meaning, context, number, number, column));
  }

  /** The number of statements so far. */
  int size() {
    return statements.size();
  }

  /** A statement added before, counted from 0. */
  Statement get(int index) {
    return statements.get(index);
  }

  /** The statement added last. */
  Statement last() {
    return statements.get(statements.size() - 1);
  }

  private void replaceLast(Statement statement) {
    statements.set(statements.size() - 1, statement);
  }

  /** Puts another meaning on a statement that turns out to be garbled. */
  void doubt(int index, Meaning meaning) {
    Statement old = statements.get(index);
    statements.set(
        index, new Statement(meaning, old.context(), old.line(), old.lastLine(), old.column()));
  }

  /** Puts the meaning on a statement that goes on in a line further down, counted from 0. */
  void extend(int index, Meaning meaning, int line) {
    Statement old = statements.get(index);
    statements.subList(index + 1, statements.size()).clear();
    statements.set(
        index, new Statement(meaning, old.context(), old.line(), lines.number(line), old.column()));
  }

  /** The meaning of an unread line that begins so. */
  static Meaning harmless(String keyword) {
    return new Meaning(Form.SET, new Command.Harmless(keyword), "");
  }

  /** All statements. */
  List<Statement> toList() {
    return statements;
  }
}
