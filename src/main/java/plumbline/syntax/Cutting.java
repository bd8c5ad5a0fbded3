package plumbline.syntax;

import plumbline.statement.Command.Layout;
import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;

/**
 * The statements of one switch while they are cut, and which of them was the last that says
 * something. Lines are counted from 0.
 */
final class Cutting {
  private final ScannedLines scan;
  private final StatementList list;
  private int lastStatement = -1;
  private int lastLine = -1;

  Cutting(ScannedLines scan) {
    this.scan = scan;
    this.list = new StatementList(scan.lines().lines());
  }

  /** The statements so far. */
  StatementList list() {
    return list;
  }

  /** Adds a statement that says something. */
  void emit(Meaning meaning, Context context, int line) {
    list.add(meaning, context, line, scan.column(line));
    lastStatement = list.size() - 1;
  }

  /** Adds a line of a block that is not read. */
  void unread(Meaning meaning, int line) {
    list.unread(meaning, line, scan.column(line));
    lastStatement = list.size() - 1;
  }

  /** Adds the name of the switch where it stands alone on its line. */
  void name(Meaning meaning, int line) {
    list.add(meaning, Context.TOP, line, scan.lines().column(line, 0));
  }

  /** Adds a line that is no statement. */
  void layout(Layout.Kind kind, Context context, int line) {
    list.layout(kind, context, line);
  }

  /** Says whether anything was said so far. */
  boolean hasStatement() {
    return lastStatement >= 0;
  }

  /** The statement that was said last. */
  Statement lastStatement() {
    return list.get(lastStatement);
  }

  /** Puts in doubt what was said last. */
  void doubtLast() {
    list.doubt(lastStatement, Reader.doubtful(lastStatement().meaning()));
  }

  /** Gives what was said last the meaning that it has together with a line further down. */
  void extendLast(Meaning meaning, int line) {
    list.extend(lastStatement, meaning, line);
  }

  /** Notes that the config reaches to this line. */
  void reach(int line) {
    lastLine = line;
  }

  /** The last line that the config reaches; -1 where there is none. */
  int lastLine() {
    return lastLine;
  }
}
