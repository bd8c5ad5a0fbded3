package plumbline.syntax;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Log messages that a switch prints between the lines of a capture, such as {@code *Mar 1
 * 00:03:15.655: %SYS-5-CONFIG_I: Configured from console by console}.
 */
final class LogLine {
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";
  private static final List<String> HEADER_WORDS = List.of("interface ", "vlan ");
  private static final String CONFIGURED = ": Configured from console";

  private static final Pattern TIME =
      Pattern.compile(
          "[*.]?(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) +\\d{1,2} (?:\\d{4} )?"
              + "\\d{1,2}:\\d{2}:\\d{2}(?:\\.\\d+)?(?: [A-Z]{2,5})?: ");

  private LogLine() {}

  /** Says whether a line without a mark begins with the time of a message, as no statement does. */
  static boolean isTimed(String line) {
    char first = line.charAt(0);
    return (first == '*' || first == '.' || Character.isUpperCase(first))
        && line.indexOf(':') > 0
        && mark(line) < 0
        && TIME.matcher(line).lookingAt();
  }

  /** The offset of a message's mark, {@code %FACILITY-severity-NAME}; -1 where there is none. */
  static int mark(String line) {
    for (int at = line.indexOf('%'); at >= 0; at = line.indexOf('%', at + 1)) {
      if (isMark(line, at + 1)) {
        return at;
      }
    }
    return -1;
  }

  private static boolean isMark(String line, int from) {
    int at = from;
    while (at < line.length() && isName(line.charAt(at))) {
      at++;
    }
    // The severity is one digit between two hyphens.
    for (int digit = from + 2; digit + 2 < at; digit++) {
      if (line.charAt(digit - 1) == '-'
          && line.charAt(digit) >= '0'
          && line.charAt(digit) <= '7'
          && line.charAt(digit + 1) == '-') {
        return Character.isUpperCase(line.charAt(from));
      }
    }
    return false;
  }

  private static boolean isName(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
  }

  /**
   * Says whether nothing but a time stands before the mark, so that the whole line is a message.
   */
  static boolean isWhole(String line, int mark) {
    String before = line.substring(0, mark).strip();
    if (before.isEmpty()) {
      return true;
    }
    char first = before.charAt(0);
    boolean time = before.indexOf(':') > 0 && before.chars().anyMatch(Character::isDigit);
    return time && (first == '*' || first == '.' || startsWithDate(before));
  }

  private static boolean startsWithDate(String before) {
    if (Character.isDigit(before.charAt(0))) {
      return true;
    }
    String word = before.length() < 4 ? "" : before.substring(0, 3).toLowerCase(Locale.ROOT);
    int month = word.isEmpty() ? -1 : MONTHS.indexOf(word);
    return month >= 0 && month % 3 == 0 && before.charAt(3) == ' ';
  }

  /**
   * Where config text begins that was joined to a whole message because its end was lost; -1 where
   * none can be told. One message is known to end in {@code by ...}.
   */
  static int joinedText(String line) {
    int at = line.indexOf(CONFIGURED);
    if (at < 0) {
      return -1;
    }
    int begin = at + CONFIGURED.length();
    while (begin < line.length() && CleanLines.isBlank(line.charAt(begin))) {
      begin++;
    }
    return begin == line.length() || line.startsWith("by ", begin) ? -1 : begin;
  }

  /**
   * Where a block's header begins that was joined to a whole message because a line end was lost;
   * -1 where none was. A message may itself end in a port's name behind the word, so that only the
   * one whose end is known can have a header behind a blank.
   */
  static int joinedHeader(String line, int mark) {
    boolean known = line.indexOf(CONFIGURED, mark) >= 0;
    for (String word : HEADER_WORDS) {
      int at = line.lastIndexOf(word);
      if (at > mark
          && (known || !CleanLines.isBlank(line.charAt(at - 1)))
          && isHeader(line.substring(at))) {
        return at;
      }
    }
    return -1;
  }

  private static boolean isHeader(String text) {
    return Shapes.isPortHeader(text) || Shapes.isVlanHeader(text);
  }
}
