package plumbline.syntax;

import java.util.Arrays;

/**
 * Where the lines of a text begin and end, as an editor shows them. Line ends are LF or CRLF; lone
 * CR only where the text has no LF at all. A text that is one line with literal {@code \n} or
 * {@code \r\n} escapes is cut at the escapes; all its pieces are then on line 1.
 */
final class Lines {
  /** Fewer escapes than this are taken for text, such as a path in a description. */
  private static final int LEAST_ESCAPES = 3;

  private final String text;
  private final boolean escaped;
  private final boolean closed;
  private int[] starts = new int[64];
  private int[] ends = new int[64];
  private int count;

  Lines(String text) {
    this.text = text;
    int from = text.startsWith("\uFEFF") ? 1 : 0;
    boolean hasLf = text.indexOf('\n') >= 0;
    char lineEnd = hasLf || text.indexOf('\r') < 0 ? '\n' : '\r';
    this.closed = !text.isEmpty() && text.charAt(text.length() - 1) == lineEnd;
    this.escaped = isOneEscapedLine(from, lineEnd);
    if (escaped) {
      cutEscapes(from);
    } else {
      cut(from, lineEnd);
    }
  }

  private void cut(int from, char lineEnd) {
    int start = from;
    for (int at = text.indexOf(lineEnd, start); at >= 0; at = text.indexOf(lineEnd, start)) {
      add(start, at);
      start = at + 1;
    }
    if (start < text.length() || count == 0) {
      add(start, text.length());
    }
  }

  private boolean isOneEscapedLine(int from, char lineEnd) {
    int first = text.indexOf(lineEnd);
    if (first >= 0 && !text.substring(first).isBlank()) {
      return false;
    }
    int found = 0;
    for (int at = text.indexOf("\\n", from); at >= 0; at = text.indexOf("\\n", at + 2)) {
      found++;
    }
    return found >= LEAST_ESCAPES;
  }

  private void cutEscapes(int from) {
    int stop = text.stripTrailing().length();
    int start = from;
    for (int at = text.indexOf("\\n", from); at >= 0; at = text.indexOf("\\n", start)) {
      boolean pair = at - 2 >= start && text.startsWith("\\r", at - 2);
      add(start, pair ? at - 2 : at);
      start = at + 2;
    }
    if (start < stop) {
      add(start, stop);
    }
  }

  private void add(int start, int end) {
    if (count == starts.length) {
      starts = Arrays.copyOf(starts, count * 2);
      ends = Arrays.copyOf(ends, count * 2);
    }
    int last = end;
    while (last > start && text.charAt(last - 1) == '\r') {
      last--;
    }
    starts[count] = start;
    ends[count] = last;
    count++;
  }

  /** The whole text. */
  String text() {
    return text;
  }

  /** The number of lines, at least 1; pieces where the text is one escaped line. */
  int count() {
    return count;
  }

  /** Offset of a line's first character; lines are counted from 0 here. */
  int start(int line) {
    return starts[line];
  }

  /** Offset behind a line's last character, its line end left out. */
  int end(int line) {
    return ends[line];
  }

  /** The 1-based number an editor shows for a line. */
  int number(int line) {
    return escaped ? 1 : line + 1;
  }

  /** The 1-based column an editor shows for an offset of a line. */
  int column(int line, int offset) {
    return offset - (escaped ? starts[0] : starts[line]) + 1;
  }

  /** Says whether the last line has a line end. */
  boolean closed() {
    return closed || (escaped && text.stripTrailing().endsWith("\\n"));
  }
}
