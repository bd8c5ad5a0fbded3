package plumbline.report;

/**
 * Says once in a report that fast-start means what IEEE 802.1Q calls an edge port, beside its first
 * mention.
 */
final class EdgePortNote {
  private static final String TERM = "fast-start";
  private static final String NOTE = " (edge port)";

  private boolean said;

  /** The same words, with the note where it is due. */
  String on(String words) {
    if (said) {
      return words.replace(TERM + NOTE, TERM);
    }
    int at = words.indexOf(TERM);
    if (at < 0) {
      return words;
    }
    said = true;
    int end = at + TERM.length();
    String rest = words.substring(end).replace(NOTE, "");
    return words.substring(0, end) + NOTE + rest;
  }
}
