package plumbline.syntax;

import java.util.List;
import java.util.Locale;

/** Finds where a login banner, a menu title or another delimited text ends. */
final class Banner {
  /** A banner that never closes: its first line is all of it. */
  static final int NEVER = -1;

  /** No banner opens here. */
  static final int NONE = -2;

  private static final List<String> KINDS =
      List.of("motd", "login", "exec", "incoming", "slip-ppp", "prompt-timeout", "config-save");

  private Banner() {}

  /**
   * The last line of the banner that opens on a line, counted from 0; {@link #NONE}, or {@link
   * #NEVER} where nothing closes it.
   */
  static int lastLine(CleanLines lines, int line, String content) {
    char first = content.charAt(0);
    if (first == 'b' || first == 'B') {
      int begin = operand(content);
      if (begin > 0) {
        return banner(lines, line, content, begin);
      }
    }
    return delimited(lines, line, content);
  }

  /** The offset of what follows {@code banner KIND}; 0 where the line is no banner. */
  private static int operand(String content) {
    String word = EndUserCommand.word(content, 0);
    String kind = EndUserCommand.word(content, 1);
    if (word.length() < 2 || !"banner".startsWith(word) || kind.isEmpty()) {
      return 0;
    }
    int at = content.toLowerCase(Locale.ROOT).indexOf(kind, word.length());
    boolean known = KINDS.stream().anyMatch(full -> full.startsWith(kind));
    return known ? at + kind.length() : word.length();
  }

  private static int banner(CleanLines lines, int line, String content, int begin) {
    String text = content.substring(begin).stripLeading();
    if (text.isEmpty()) {
      return wordLine(lines, line, "EOF");
    }
    int word =
        text.indexOf(' ') < 0 && text.length() > 1 && Character.isLetter(text.charAt(0))
            ? wordLine(lines, line, text)
            : NEVER;
    if (word != NEVER) {
      return word;
    }
    boolean caret = text.charAt(0) == '^' && text.length() > 1;
    String delimiter = text.substring(0, caret ? 2 : 1);
    if (text.indexOf(delimiter, delimiter.length()) >= 0) {
      return line;
    }
    return closing(lines, line, delimiter);
  }

  /** A delimited text under another name, such as a menu's title: its line ends in control-C. */
  private static int delimited(CleanLines lines, int line, String content) {
    int last = content.length() - 1;
    String delimiter =
        content.charAt(last) == '\u0003' ? "\u0003" : content.endsWith(" ^C") ? "^C" : "";
    if (delimiter.isEmpty() || content.indexOf(delimiter) <= last - delimiter.length()) {
      return NONE;
    }
    int close = closing(lines, line, delimiter);
    return close == NEVER ? NONE : close;
  }

  private static int closing(CleanLines lines, int line, String delimiter) {
    boolean likeConfig = false;
    for (int at = line + 1; at < lines.count(); at++) {
      String content = lines.content(at);
      if (opensBanner(content)) {
        return NEVER;
      }
      likeConfig |= endsSearch(lines, at, content);
      // A switch that asks for the text names the delimiter itself.
      if (content.contains(delimiter) && !Shapes.startsWith(content, "Enter TEXT message")) {
        return likeConfig && !standsAlone(content, delimiter) ? NEVER : at;
      }
    }
    return NEVER;
  }

  /**
   * Says whether a line is the delimiter and nothing else: a banner may quote config, and is still
   * closed by such a line. A sign that also begins comments proves nothing.
   */
  private static boolean standsAlone(String content, String delimiter) {
    return content.equals(delimiter) && !delimiter.equals("#") && !delimiter.equals("!");
  }

  private static boolean opensBanner(String content) {
    return EndUserCommand.word(content, 0).equals("banner")
        && KINDS.contains(EndUserCommand.word(content, 1));
  }

  private static int wordLine(CleanLines lines, int line, String word) {
    for (int at = line + 1; at < lines.count(); at++) {
      String content = lines.content(at);
      if (content.equals(word)) {
        return at;
      }
      if (endsSearch(lines, at, content)) {
        return NEVER;
      }
    }
    return NEVER;
  }

  /**
   * Says whether a line is so plainly config that the banner above cannot still be open: a lost
   * delimiter must not swallow the ports below.
   */
  private static boolean endsSearch(CleanLines lines, int at, String content) {
    if (content.isEmpty() || lines.indent(at) > 0) {
      return false;
    }
    return switch (content.charAt(0)) {
      case 'i', 'I' -> Shapes.isPortHeader(content);
      case 'l', 'L' -> {
        String kind = EndUserCommand.word(content, 1);
        String number = EndUserCommand.word(content, 2);
        yield EndUserCommand.word(content, 0).equals("line")
            && (kind.startsWith("con") || kind.equals("vty") || kind.equals("aux"))
            && !number.isEmpty()
            && Character.isDigit(number.charAt(0));
      }
      case 'b', 'B' -> opensBanner(content);
      case 'v', 'V' -> Shapes.isVersion(content);
      default -> false;
    };
  }
}
