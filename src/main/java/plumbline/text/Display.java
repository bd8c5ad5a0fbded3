package plumbline.text;

import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Text as a terminal shows it: without control characters, measured and wrapped in columns. */
public final class Display {
  private static final Set<UnicodeScript> WIDE_SCRIPTS =
      EnumSet.of(
          UnicodeScript.HAN,
          UnicodeScript.HIRAGANA,
          UnicodeScript.KATAKANA,
          UnicodeScript.BOPOMOFO,
          UnicodeScript.YI);

  private Display() {}

  /**
   * The text without anything that could steer a terminal or reorder a line: control characters and
   * the escape sequences that they open, bidirectional and other invisible marks. Tabs and line
   * breaks become one blank each.
   */
  public static String clean(String text) {
    return isPlain(text) ? text : cleanPoints(text);
  }

  private static boolean isPlain(String text) {
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c < ' ' || c > '~') {
        return false;
      }
    }
    return true;
  }

  private static String cleanPoints(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    for (int at = 0; at < text.length(); ) {
      int point = text.codePointAt(at);
      int next = at + Character.charCount(point);
      if (point == '\t' || point == '\n' || point == '\r') {
        clean.append(' ');
      } else if (point == 0x1b || point == 0x9b) {
        next = afterEscape(text, at, point);
      } else if (isPrintable(point)) {
        clean.appendCodePoint(point);
      }
      at = next;
    }
    return clean.toString();
  }

  /** ECMA-48 5.4: a control sequence is its parameters, its intermediates and one final byte. */
  private static int afterEscape(String text, int at, int introducer) {
    int next = at + 1;
    if (introducer == 0x1b) {
      if (next >= text.length() || text.charAt(next) != '[') {
        return next;
      }
      next++;
    }
    while (next < text.length() && text.charAt(next) >= 0x20 && text.charAt(next) <= 0x3f) {
      next++;
    }
    boolean ends = next < text.length() && text.charAt(next) >= 0x40 && text.charAt(next) <= 0x7e;
    return ends ? next + 1 : next;
  }

  private static boolean isPrintable(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  /** The columns that the text takes: two for wide characters, none for combining marks. */
  public static int width(String text) {
    int columns = 0;
    for (int at = 0; at < text.length(); ) {
      int point = text.codePointAt(at);
      columns += width(point);
      at += Character.charCount(point);
    }
    return columns;
  }

  private static int width(int point) {
    if (point < 0x300) {
      return 1;
    }
    int type = Character.getType(point);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    return isWide(point) ? 2 : 1;
  }

  /**
   * Unicode Standard Annex 11, classes W and F, as far as scripts and blocks tell them (memory).
   */
  private static boolean isWide(int point) {
    boolean halfWidth = isWithin(point, 0xff61, 0xffdc);
    boolean fullWidth = isWithin(point, 0xff01, 0xff60);
    boolean syllables = isWithin(point, 0x1100, 0x115f) || isWithin(point, 0xac00, 0xd7a3);
    boolean punctuation = isWithin(point, 0x3000, 0x303e);
    boolean pictures = isWithin(point, 0x1f300, 0x1f64f) || isWithin(point, 0x1f900, 0x1f9ff);
    return !halfWidth
        && (fullWidth
            || syllables
            || punctuation
            || pictures
            || WIDE_SCRIPTS.contains(UnicodeScript.of(point)));
  }

  private static boolean isWithin(int point, int first, int last) {
    return point >= first && point <= last;
  }

  /** The text followed by blanks up to the given number of columns; longer text stays as it is. */
  public static String pad(String text, int columns) {
    return text + " ".repeat(Math.max(0, columns - width(text)));
  }

  /**
   * The text in lines of at most the given width, broken at blanks; a word that is wider than a
   * line is broken behind a comma, slash or hyphen where it has one, else anywhere.
   *
   * @param columns at least 2, so that every character fits
   * @return at least one line, none of which ends in a blank
   */
  public static List<String> wrap(String text, int columns) {
    if (columns < 2) {
      throw new IllegalArgumentException("a line of " + columns + " columns holds no text");
    }
    String stripped = text.strip();
    if (stripped.length() <= columns && !stripped.contains("  ") && width(stripped) <= columns) {
      return List.of(stripped);
    }
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : stripped.split(" +", -1)) {
      String rest = word;
      if (!line.isEmpty() && width(line) + 1 + width(rest) <= columns) {
        line = line + " " + rest;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      while (width(rest) > columns) {
        int cut = cut(rest, columns);
        lines.add(rest.substring(0, cut));
        rest = rest.substring(cut);
      }
      line = rest;
    }
    lines.add(line);
    return lines;
  }

  /** How many characters of an overlong word go on this line. */
  private static int cut(String word, int columns) {
    int fits = 0;
    int good = 0;
    int taken = 0;
    for (int at = 0; at < word.length(); ) {
      int point = word.codePointAt(at);
      taken += width(point);
      if (taken > columns) {
        break;
      }
      at += Character.charCount(point);
      fits = at;
      if (point == ',' || point == '/' || point == '-') {
        good = at;
      }
    }
    return good > 0 ? good : fits;
  }
}
