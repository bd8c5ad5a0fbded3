package plumbline.syntax;

import java.util.Locale;
import plumbline.port.PortNames;

/** Tells lines by their shape alone: headers of configs and ports, tables of other commands. */
final class Shapes {
  private static final int LEAST_RULE = 8;

  private Shapes() {}

  /** Says whether a line opens ports: the word in full or in part, and a port's name. */
  static boolean isPortHeader(String content) {
    String word = EndUserCommand.word(content, 0);
    return word.length() >= 3
        && "interface".startsWith(word)
        && PortNames.parse(content.substring(word.length())) instanceof PortNames.Reading.Ports;
  }

  /** Says whether a line opens a VLAN stanza: the word and a list of numbers. */
  static boolean isVlanHeader(String content) {
    if (!content.regionMatches(true, 0, "vlan ", 0, 5) || content.length() < 6) {
      return false;
    }
    for (int at = 5; at < content.length(); at++) {
      char c = content.charAt(at);
      if ((c < '0' || c > '9') && c != ',' && c != '-') {
        return false;
      }
    }
    return true;
  }

  /** Says whether a line is nothing but a piece of a list of numbers. */
  static boolean isListPiece(String content) {
    return content
        .chars()
        .allMatch(c -> (c >= '0' && c <= '9') || c == ',' || c == '-' || c == ' ');
  }

  /** Says whether a line stops where a list of numbers must go on. */
  static boolean endsInsideList(String content) {
    int last = content.length() - 1;
    return last > 0
        && (content.charAt(last) == ',' || content.charAt(last) == '-')
        && Character.isDigit(content.charAt(last - 1));
  }

  /** Says whether a line is the version line near the top of a saved config. */
  static boolean isVersion(String content) {
    return content.regionMatches(true, 0, "version ", 0, 8)
        && content.length() > 8
        && Character.isDigit(content.charAt(8));
  }

  /** Says whether a version line is of the dialects whose dumps close with {@code end}. */
  static boolean isEndPrintingVersion(String content) {
    return isVersion(content)
        && content.substring(8).chars().allMatch(c -> c == '.' || Character.isDigit(c));
  }

  /** Says whether a line is what a switch prints before it shows a config. */
  static boolean isPreamble(String content) {
    return startsWith(content, "Building configuration")
        || startsWith(content, "Current configuration")
        || startsWith(content, "Startup configuration")
        || (startsWith(content, "Using ") && content.contains(" out of "));
  }

  /** Says whether a comment is one that a switch puts on top of a shown config. */
  static boolean isHeaderComment(String content) {
    String text = content.substring(1).stripLeading().toLowerCase(Locale.ROOT);
    return text.startsWith("command: show running-config")
        || text.startsWith("command: show startup-config")
        || text.startsWith("device: ")
        || text.startsWith("last configuration change at ")
        || text.startsWith("nvram config last updated at ")
        || text.startsWith("no configuration change since last restart")
        || text.startsWith("running configuration last done at")
        || text.startsWith("current configuration:");
  }

  /** Says whether such a comment is of the dialects whose dumps close with {@code end}. */
  static boolean isEndPrintingComment(String content) {
    String text = content.substring(1).stripLeading().toLowerCase(Locale.ROOT);
    return text.startsWith("device: ")
        || text.startsWith("last configuration change at ")
        || text.startsWith("nvram config last updated at ");
  }

  /** Says whether a line underlines the header of a table. */
  static boolean isTableRule(String content) {
    int marks = 0;
    for (int at = 0; at < content.length(); at++) {
      char c = content.charAt(at);
      if (c != '-' && c != ' ' && c != '+' && c != '|' && c != '=' && c != '\t') {
        return false;
      }
      marks += c == '-' || c == '=' ? 1 : 0;
    }
    return marks >= LEAST_RULE;
  }

  /**
   * Says whether a line heads a table that has no rule below: it begins with a capital letter and
   * has three columns or more, two blanks or more apart. No statement looks so.
   */
  static boolean isTableHeader(String content) {
    if (!Character.isUpperCase(content.charAt(0))) {
      return false;
    }
    int gaps = 0;
    for (int at = content.indexOf("  "); at >= 0; at = content.indexOf("  ", at)) {
      while (content.charAt(at) == ' ') {
        at++;
      }
      gaps++;
    }
    return gaps >= 2 && !isPortHeader(content);
  }

  /** Says whether a line separates the output of commands, as {@code ------- show vlan -------}. */
  static boolean isSeparator(String content) {
    return content.startsWith("-----") && content.contains(" show ");
  }

  static boolean startsWith(String content, String beginning) {
    return content.regionMatches(true, 0, beginning, 0, beginning.length());
  }
}
