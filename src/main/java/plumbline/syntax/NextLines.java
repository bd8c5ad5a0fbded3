package plumbline.syntax;

/** Tells what the lines right above and below a line say about it. Lines are counted from 0. */
final class NextLines {
  private final CleanLines lines;
  private final ScannedLines out;

  NextLines(CleanLines lines, ScannedLines out) {
    this.lines = lines;
    this.out = out;
  }

  /** Says whether a line may be the rest of a statement that a log message cut in two. */
  boolean isLogAbove(int line) {
    return line > 0
        && (out.kind(line - 1) == LineKind.LOG || out.kind(line - 1) == LineKind.GARBLED);
  }

  /** Says whether a number may be the rest of a list that stops in the line above. */
  boolean isListAbove(int line, String content) {
    if (!Shapes.isListPiece(content) || line == 0 || out.kind(line - 1) != LineKind.STATEMENT) {
      return false;
    }
    String above = lines.content(line - 1);
    int blank = above.lastIndexOf(' ');
    return blank > 0
        && (above.indexOf(',', blank) > 0 || above.indexOf('-', blank) > 0)
        && Shapes.isListPiece(above.substring(blank + 1));
  }

  /** Says whether a line is a table's header or the rule below it. */
  boolean isTable(int line, String content) {
    if (Shapes.isTableHeader(content) || Shapes.isTableRule(content)) {
      return true;
    }
    int below = line + 1;
    return below < lines.count()
        && !lines.isEmpty(below)
        && lines.indent(below) == 0
        && lines.content(below).charAt(0) == '-'
        && Shapes.isTableRule(lines.content(below));
  }
}
