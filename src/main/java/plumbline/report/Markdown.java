package plumbline.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import plumbline.text.Display;

/**
 * Foreign text in Markdown (CommonMark 0.31.2), so that it shows as the characters it has: no
 * markup, no HTML, and nothing that ticket systems make of bare text either.
 */
final class Markdown {
  /** A ticket is read by people: no line of a config that they can read is longer. */
  static final int LONGEST = 300;

  /** What CommonMark, its common extensions or formulas would read as markup within a line. */
  private static final Pattern MARKUP = Pattern.compile("[\\\\`*_\\[\\]<>|~{}!&$^]");

  /** What ticket systems turn into links, mentions or notices to people; not within code. */
  private static final Pattern LIVELY =
      Pattern.compile("[@#]|://|www\\.|mailto:|xmpp:", Pattern.CASE_INSENSITIVE);

  private static final Pattern TICKS = Pattern.compile("`+");

  private Markdown() {}

  /** Words within a line. */
  static String words(String text) {
    String line = line(text);
    return LIVELY.matcher(line).find() ? code(text) : MARKUP.matcher(line).replaceAll("\\\\$0");
  }

  /** Text as it stands, within a line; the empty text is no code. */
  static String code(String text) {
    String line = line(text).strip();
    if (line.isEmpty()) {
      return "";
    }
    // CommonMark 6.1: a run of backticks of another length does not end a code span, and one blank
    // at both ends does not belong to it
    int longest = 0;
    Matcher ticks = TICKS.matcher(line);
    while (ticks.find()) {
      longest = Math.max(longest, ticks.group().length());
    }
    String fence = "`".repeat(longest + 1);
    String room = line.startsWith("`") || line.endsWith("`") ? " " : "";
    return fence + room + line + room + fence;
  }

  private static String line(String text) {
    String clean = Display.clean(text).replaceAll(" +", " ");
    int length = clean.codePointCount(0, clean.length());
    return length <= LONGEST
        ? clean
        : clean.substring(0, clean.offsetByCodePoints(0, LONGEST))
            + "... ("
            + length
            + " characters, all of them in a --report FILE.json)";
  }
}
