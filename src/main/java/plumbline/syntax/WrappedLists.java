package plumbline.syntax;

import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.Statement;

/**
 * Joins lists that a terminal wrapped: a line of numbers alone, which no statement of a port is.
 */
final class WrappedLists {
  private final ScannedLines scan;
  private final Reader reader;
  private final Cutting out;

  WrappedLists(ScannedLines scan, Reader reader, Cutting out) {
    this.scan = scan;
    this.reader = reader;
    this.out = out;
  }

  /** Says whether a line is the rest of a list that stops in the line above. */
  boolean holds(int line, String text, Block block) {
    return block.context() == Context.PORT
        && out.hasStatement()
        && out.lastStatement().context() == Context.PORT
        && Shapes.isListPiece(text)
        && isRightBelow(out.lastStatement(), line)
        && (Reader.isPortFact(out.lastStatement().meaning())
            || Shapes.endsInsideList(scan.statement(line - 1)));
  }

  private boolean isRightBelow(Statement above, int line) {
    int at = line - 1;
    while (at >= 0 && !scan.kind(at).isStatement()) {
      at--;
    }
    return at >= 0 && scan.lines().lines().number(at) == above.lastLine();
  }

  /** Joins the line to the statement above; both are in doubt where they make none together. */
  void join(int line, String text) {
    Statement above = out.lastStatement();
    String begun = scan.statement(above.line() - 1);
    Meaning joined = reader.read(Context.PORT, begun + text);
    if (Shapes.endsInsideList(begun)
        && above.line() == above.lastLine()
        && Reader.isPortFact(joined)) {
      out.extendLast(joined, line);
      return;
    }
    if (!Reader.isUnknown(above.meaning())) {
      out.doubtLast();
    }
    out.emit(reader.garbled(Context.PORT, text), Context.PORT, line);
  }
}
