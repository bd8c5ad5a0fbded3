package plumbline.syntax;

/** What a terminal shows of one line that holds control characters. */
final class Terminal {
  private Terminal() {}

  /** One line as shown. */
  static final class Shown {
    private final String cells;
    private final int[] offsets;
    private final boolean paged;

    private Shown(String cells, int[] offsets, boolean paged) {
      this.cells = cells;
      this.offsets = offsets;
      this.paged = paged;
    }

    /** The characters in view. */
    String cells() {
      return cells;
    }

    /** Where the character of a cell stood in the text. */
    int offset(int cell) {
      return offsets[cell];
    }

    /** Says whether a pager mark was erased from the line. */
    boolean paged() {
      return paged;
    }
  }

  /** A line without control characters. */
  static Shown plain(String text, int start, int end) {
    int[] offsets = new int[end - start];
    for (int at = start; at < end; at++) {
      offsets[at - start] = at;
    }
    return new Shown(text.substring(start, end), offsets, false);
  }

  /**
   * Applies backspaces, overprinting carriage returns and escape sequences. Where a pager mark was
   * erased, what was typed over it counts whole: the number of backspaces seldom fits the mark.
   */
  static Shown show(String text, int start, int end) {
    int from = start;
    boolean paged = false;
    int returned = lastPrinted(text, start, end);
    if (returned > start) {
      paged = holdsMark(text, start, returned);
      from = returned;
    }
    int erased = text.lastIndexOf('\b', end - 1);
    if (erased >= from && holdsMark(text, from, erased)) {
      paged = true;
      from = erased + 1;
    }
    StringBuilder cells = new StringBuilder();
    int[] offsets = new int[end - from];
    int cursor = 0;
    for (int at = from; at < end; at++) {
      char c = text.charAt(at);
      if (c == '\b' || c == '\u007F') {
        cursor = Math.max(0, cursor - 1);
      } else if (c == '\u001B') {
        at = endOfSequence(text, at, end);
      } else if (c == '\u00A0' || c == '\t' || c == '\u0003' || c >= ' ') {
        char shown = c == '\u00A0' ? ' ' : c;
        if (cursor < cells.length()) {
          cells.setCharAt(cursor, shown);
        } else {
          cells.append(shown);
        }
        offsets[cursor++] = at;
      }
    }
    return new Shown(cells.toString(), offsets, paged);
  }

  /** The offset behind the carriage return before the last text that is not blank. */
  private static int lastPrinted(String text, int start, int end) {
    int stop = end;
    for (int at = text.lastIndexOf('\r', end - 1);
        at >= start;
        at = text.lastIndexOf('\r', at - 1)) {
      if (!text.substring(at + 1, stop).isBlank()) {
        return at + 1;
      }
      stop = at;
    }
    return start;
  }

  private static boolean holdsMark(String text, int start, int end) {
    for (int at = start; at < end; at++) {
      if (PagerMark.length(text, at, end) > 0) {
        return true;
      }
    }
    return false;
  }

  private static int endOfSequence(String text, int escape, int end) {
    int at = escape + 1;
    if (at >= end || text.charAt(at) != '[') {
      return Math.min(at, end - 1);
    }
    at++;
    while (at < end && (text.charAt(at) < '@' || text.charAt(at) > '~')) {
      at++;
    }
    return Math.min(at, end - 1);
  }
}
