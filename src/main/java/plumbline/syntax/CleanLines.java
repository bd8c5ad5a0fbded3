package plumbline.syntax;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;

/**
 * The lines of a text without what a terminal or a copy added: blanks around, pager marks,
 * overprinted and backspaced text, escape sequences, {@code <br/>}. Every line keeps the place of
 * its first character. Lines are counted from 0.
 */
final class CleanLines {
  private static final int TAB = 8;

  /** A pager erases its mark with about this many blanks; so many are no indentation. */
  private static final int ERASED = 8;

  private final Lines lines;
  private final String text;
  private final int[] begins;
  private final int[] ends;
  private final int[] indents;
  private final Map<Integer, String> replaced = new HashMap<>();
  private final BitSet paged = new BitSet();
  private final BitSet unsure = new BitSet();

  CleanLines(Lines lines) {
    this.lines = lines;
    this.text = lines.text();
    this.begins = new int[lines.count()];
    this.ends = new int[lines.count()];
    this.indents = new int[lines.count()];
    char[] chars = text.toCharArray();
    for (int line = 0; line < begins.length; line++) {
      clean(line, chars);
    }
  }

  private void clean(int line, char[] chars) {
    int start = lines.start(line);
    int end = lines.end(line);
    boolean plain = true;
    for (int at = start; at < end && plain; at++) {
      char c = chars[at];
      plain = c == '\t' || c == '\u0003' || (c >= ' ' && c != '\u00A0' && c != '\u007F');
    }
    if (!plain) {
      settle(line, Terminal.show(text, start, end));
      return;
    }
    while (end > start && isBlank(chars[end - 1])) {
      end--;
    }
    int begin = start;
    while (begin < end && isBlank(chars[begin])) {
      begin++;
    }
    if (begin < end && (text.charAt(end - 1) == '>' || PagerMark.length(text, begin, end) > 0)) {
      settle(line, Terminal.plain(text, start, end));
      return;
    }
    begins[line] = begin;
    ends[line] = end;
    indents[line] = width(text, start, begin);
  }

  /** Takes a line that a terminal showed, with pager marks and line-break tags still in it. */
  private void settle(int line, Terminal.Shown shown) {
    String cells = shown.cells();
    int end = trimEnd(cells);
    int from = 0;
    int begin = skipBlanks(cells, 0, end);
    for (int mark = PagerMark.length(cells, begin, end);
        mark > 0;
        mark = PagerMark.length(cells, begin, end)) {
      paged.set(line);
      from = Math.min(begin + mark, end);
      if (from < end && cells.charAt(from) == ' ') {
        from++;
      }
      begin = skipBlanks(cells, from, end);
    }
    if (shown.paged()) {
      paged.set(line);
    }
    int indent = width(cells, from, begin);
    if (paged.get(line) && indent >= ERASED) {
      unsure.set(line);
    }
    indents[line] = indent;
    begins[line] = begin < end ? shown.offset(begin) : lines.end(line);
    ends[line] = begins[line];
    replaced.put(line, cells.substring(begin, end));
  }

  private static int trimEnd(String cells) {
    int end = cells.length();
    while (true) {
      while (end > 0 && isBlank(cells.charAt(end - 1))) {
        end--;
      }
      int tag = tagLength(cells, end);
      if (tag == 0) {
        return end;
      }
      end -= tag;
    }
  }

  private static int tagLength(String cells, int end) {
    for (String tag : new String[] {"<br/>", "<br>", "<br />"}) {
      int from = end - tag.length();
      if (from >= 0 && cells.regionMatches(true, from, tag, 0, tag.length())) {
        return tag.length();
      }
    }
    return 0;
  }

  private static int skipBlanks(String cells, int from, int end) {
    int at = from;
    while (at < end && isBlank(cells.charAt(at))) {
      at++;
    }
    return at;
  }

  private static int width(String cells, int from, int to) {
    int width = 0;
    for (int at = from; at < to; at++) {
      width = cells.charAt(at) == '\t' ? (width / TAB + 1) * TAB : width + 1;
    }
    return width;
  }

  static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }

  /** The number of lines. */
  int count() {
    return begins.length;
  }

  /** The places behind the lines. */
  Lines lines() {
    return lines;
  }

  /** A line's text without blanks around it. */
  String content(int line) {
    if (begins[line] == ends[line]) {
      return replaced.getOrDefault(line, "");
    }
    return text.substring(begins[line], ends[line]);
  }

  /** Says whether nothing is on a line. */
  boolean isEmpty(int line) {
    return begins[line] == ends[line] && replaced.getOrDefault(line, "").isEmpty();
  }

  /** The width of the blanks before a line's text, tabs at every eighth column. */
  int indent(int line) {
    return indents[line];
  }

  /** The 1-based column of a line's first character, {@code skipped} characters of it left out. */
  int column(int line, int skipped) {
    return lines.column(line, begins[line]) + skipped;
  }

  /** Says whether a pager stopped at this line. */
  boolean paged(int line) {
    return paged.get(line);
  }

  /** Says whether the indentation may be what a pager left behind. */
  boolean unsureIndent(int line) {
    return unsure.get(line);
  }

  @Override
  public String toString() {
    return begins.length + " lines, indents " + Arrays.toString(indents);
  }
}
