package plumbline.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says once in a report that fast-start means what IEEE 802.1Q calls an edge port, beside its first
 * mention.
 */
final class EdgePortNote {
  private static final String TERM = "fast-start";
  private static final String NOTE = " (edge port)";
  private static final Pattern MENTION = Pattern.compile(TERM + "(?!-)");

  private boolean said;

  /** The same words, with the note where it is due; names of rules that begin so are left alone. */
  String on(String words) {
    if (said) {
      return words.replace(TERM + NOTE, TERM);
    }
    Matcher term = MENTION.matcher(words);
    if (!term.find()) {
      return words;
    }
    said = true;
    String rest = words.substring(term.end()).replace(NOTE, "");
    return words.substring(0, term.end()) + NOTE + rest;
  }
}
