package plumbline.syntax;

import java.util.Locale;
import java.util.Optional;
import plumbline.statement.Context;

/**
 * A switch's prompt at the start of a captured line.
 *
 * @param host the switch's name in the prompt
 * @param mode what stands in its parentheses, such as {@code config-if}; empty at the exec level
 * @param length characters up to the command
 * @param command what was typed, blanks around it removed; may be empty
 */
record Prompt(String host, String mode, int length, String command) {
  private static final int MAX_HOST = 64;

  /** Reads a line's prompt, if it has one. */
  static Optional<Prompt> of(String line) {
    int at = 0;
    while (at < line.length() && at <= MAX_HOST && isHostChar(line.charAt(at), at)) {
      at++;
    }
    if (at == 0 || at >= line.length()) {
      return Optional.empty();
    }
    String host = line.substring(0, at);
    String mode = "";
    if (line.charAt(at) == '(') {
      int close = line.indexOf(')', at);
      int blank = line.indexOf(' ', at);
      if (close < 0 || close + 1 >= line.length() || (blank >= 0 && blank < close)) {
        return Optional.empty();
      }
      mode = line.substring(at + 1, close).toLowerCase(Locale.ROOT);
      at = close + 1;
    }
    char mark = line.charAt(at);
    if (mark != '#' && !(mark == '>' && mode.isEmpty())) {
      return Optional.empty();
    }
    int begin = at + 1;
    while (begin < line.length() && CleanLines.isBlank(line.charAt(begin))) {
      begin++;
    }
    String command = line.substring(begin);
    if (mark == '>' && !command.isEmpty() && !EndUserCommand.isOne(command)) {
      return Optional.empty();
    }
    return Optional.of(new Prompt(host, mode, begin, command));
  }

  private static boolean isHostChar(char c, int at) {
    boolean word = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    return word
        || (at > 0 && (c == '-' || c == '_' || c == '.' || c == '@' || c == '/' || c == ':'));
  }

  /** Says whether statements are typed here: the config modes and the VLAN database. */
  boolean takesStatements() {
    return mode.startsWith("config") || mode.equals("vlan");
  }

  /** The block that statements typed here belong to. */
  Context context() {
    if (mode.equals("config")) {
      return Context.TOP;
    }
    if (mode.equals("vlan")) {
      return Context.VLAN_DATABASE;
    }
    if (mode.startsWith("config-if") || mode.startsWith("config-subif")) {
      return Context.PORT;
    }
    if (mode.startsWith("config-vlan")) {
      return Context.VLAN;
    }
    return mode.startsWith("config-mst") ? Context.MST : Context.OTHER;
  }

  /** Says whether the line below is this one completed by the Tab key. */
  boolean isCompletedBy(Prompt next) {
    String typed = command;
    String whole = next.command;
    return host.equals(next.host)
        && mode.equals(next.mode)
        && !typed.isEmpty()
        && whole.length() > typed.length()
        && whole.regionMatches(true, 0, typed, 0, typed.length())
        && Character.isLetter(typed.charAt(typed.length() - 1))
        && (Character.isLetter(whole.charAt(typed.length()))
            || whole.charAt(typed.length()) == '-');
  }
}
