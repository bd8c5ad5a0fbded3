package plumbline.syntax;

import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.syntax.SwitchSplitter.Part;

/**
 * Tells lines among a port's lines that do not belong there: a piece of wrapped text, a line that
 * came from elsewhere, or what is left of a header.
 */
final class ForeignLines {
  private final ScannedLines scan;
  private final CleanLines lines;
  private final Part part;
  private final Reader reader;
  private final Cutting out;

  ForeignLines(ScannedLines scan, Part part, Reader reader, Cutting out) {
    this.scan = scan;
    this.lines = scan.lines();
    this.part = part;
    this.reader = reader;
    this.out = out;
  }

  /**
   * Says whether a line beside a port's lines is no header, for lines of a port stand below it.
   *
   * @param top what it means at top level
   */
  boolean holds(int line, Meaning top, Block block) {
    return block.context() == Context.PORT
        && !block.isSealed()
        && (Reader.isUnknown(top) || Reader.opensNothing(top))
        && !Reader.isLostHeader(top)
        && holdsPortLines(line, block);
  }

  private boolean holdsPortLines(int header, Block block) {
    for (int line = header + 1; line < part.end(); line++) {
      if (!scan.kind(line).isStatement()) {
        continue;
      }
      if (lines.indent(line) <= block.indent() || scan.prompt(line).isPresent()) {
        return false;
      }
      if (reader.isOfPortsAlone(scan.statement(line))) {
        return true;
      }
    }
    return false;
  }

  /** Keeps the port open: it, or the one whose header is lost, is in doubt from here on. */
  void take(int line, String text, Meaning top) {
    if (Reader.isFact(top)) {
      // It counts for the switch; the lines below it are still nobody's for sure.
      out.emit(top, Context.TOP, line);
      return;
    }
    out.emit(Reader.lostHeader(text, top), Context.PORT, line);
  }
}
