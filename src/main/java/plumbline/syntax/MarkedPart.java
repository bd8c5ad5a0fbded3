package plumbline.syntax;

import java.util.List;
import java.util.Locale;
import plumbline.syntax.SwitchSplitter.Part;

/** The part of a capture that is about one switch, with the marks in it. */
final class MarkedPart {
  private final ScannedLines scan;
  private final Part part;
  private final List<Mark> marks;

  MarkedPart(ScannedLines scan, Part part) {
    this.scan = scan;
    this.part = part;
    this.marks = List.copyOf(scan.marks(part.first(), part.end()));
  }

  /** Its first line and the one behind its last. */
  Part part() {
    return part;
  }

  /** Its marks, in order. */
  List<Mark> marks() {
    return marks;
  }

  /** Says whether a mark of this kind is in it. */
  boolean has(Mark.Kind kind) {
    return marks.stream().anyMatch(mark -> mark.kind() == kind);
  }

  /** Says whether one of its statements is this word alone. */
  boolean says(String word) {
    for (int line = part.first(); line < part.end(); line++) {
      if (scan.kind(line) == LineKind.STATEMENT
          && scan.statement(line).toLowerCase(Locale.ROOT).equals(word)) {
        return true;
      }
    }
    return false;
  }

  /** Says whether {@code end} is the last statement. */
  boolean ends() {
    int last = lastStatement();
    return last >= 0 && scan.statement(last).equalsIgnoreCase("end");
  }

  /** The last line that is a statement, counted from 0; -1 where there is none. */
  int lastStatement() {
    for (int line = part.end() - 1; line >= part.first(); line--) {
      if (scan.kind(line).isStatement()) {
        return line;
      }
    }
    return -1;
  }
}
