package plumbline.syntax;

import java.util.List;
import java.util.Locale;

/**
 * Commands of the exec level, which are no config: what they start tells whether the lines below
 * are config text or other output.
 */
enum EndUserCommand {
  /** Shows a whole config. */
  SHOW_CONFIG,
  /** Shows a part of a config: what is absent there is not a default. */
  SHOW_PART,
  /** Opens the config mode. */
  CONFIGURE,
  /** Opens the VLAN database, whose lines are config. */
  VLAN_DATABASE,
  /** Leaves no output that could be config. */
  OTHER;

  private static final List<String> WORDS =
      List.of(
          "show",
          "enable",
          "disable",
          "exit",
          "quit",
          "logout",
          "terminal",
          "configure",
          "copy",
          "write",
          "ping",
          "traceroute",
          "ssh",
          "telnet",
          "more",
          "dir",
          "do",
          "clear",
          "reload",
          "end",
          "vlan",
          "admin",
          "bash",
          "no",
          "debug",
          "undebug",
          "delete",
          "erase");

  private static final List<String> PAGER_OFF =
      List.of("no", "no-", "no-more", "nomore", "nopager");

  private static final List<String> PICKING =
      List.of("include", "exclude", "section", "count", "grep", "egrep", "head", "last", "tail");

  /** Says whether a text looks like a command of the exec level. */
  static boolean isOne(String command) {
    String first = word(command, 0);
    return first.length() >= 2 && WORDS.stream().anyMatch(word -> word.startsWith(first));
  }

  /** What a command at the exec level starts. */
  static EndUserCommand of(String command) {
    String verb = word(command, 0);
    String object = word(command, 1);
    String rest = word(command, 2);
    boolean terminal = isPrefix(verb, "write", 2) && isPrefix(object, "terminal", 1);
    if (terminal || (isPrefix(verb, "show", 2) && isConfig(object))) {
      return isWhole(rest, command) ? SHOW_CONFIG : SHOW_PART;
    }
    if (verb.equals("more") && object.contains("config")) {
      return SHOW_CONFIG;
    }
    if (isPrefix(verb, "configure", 4) && (object.isEmpty() || isPrefix(object, "terminal", 1))) {
      return CONFIGURE;
    }
    return verb.equals("vlan") && isPrefix(object, "database", 1) ? VLAN_DATABASE : OTHER;
  }

  /** Says whether a line is a command that saves the config; no statement begins so. */
  static boolean isSave(String line) {
    String typed = line.toLowerCase(Locale.ROOT);
    String command = typed.startsWith("do ") ? typed.substring(3).stripLeading() : typed;
    return command.equals("wr")
        || command.startsWith("wr mem")
        || command.equals("write")
        || command.startsWith("write mem")
        || command.startsWith("copy run");
  }

  /** Says whether a line is a command that shows something; no statement begins so. */
  static boolean isShow(String line) {
    return Shapes.startsWith(line, "sh")
        && isPrefix(word(line, 0), "show", 2)
        && !word(line, 1).isEmpty();
  }

  private static boolean isConfig(String object) {
    return isPrefix(object, "running-config", 2)
        || isPrefix(object, "startup-config", 3)
        || isPrefix(object, "configuration", 4);
  }

  private static boolean isWhole(String rest, String command) {
    return rest.isEmpty()
        || rest.equals("all")
        || rest.equals("view")
        || (rest.equals("|") && PAGER_OFF.contains(word(command, 3)));
  }

  /**
   * Says whether a command that shows a config has a filter that may leave all of it: {@code begin}
   * or one that is not known to pick lines.
   */
  static boolean mayShowAll(String command) {
    String filter = word(command, 3);
    return word(command, 2).equals("|")
        && !filter.isEmpty()
        && PICKING.stream().noneMatch(word -> word.startsWith(filter));
  }

  private static boolean isPrefix(String word, String whole, int least) {
    return word.length() >= least && whole.startsWith(word);
  }

  /** A word of a line in lower case, counted from 0; empty where the line has fewer. */
  static String word(String line, int index) {
    int at = 0;
    for (int n = 0; ; n++) {
      while (at < line.length() && CleanLines.isBlank(line.charAt(at))) {
        at++;
      }
      int begin = at;
      while (at < line.length() && !CleanLines.isBlank(line.charAt(at))) {
        at++;
      }
      if (n == index || begin == at) {
        return line.substring(begin, at).toLowerCase(Locale.ROOT);
      }
    }
  }
}
