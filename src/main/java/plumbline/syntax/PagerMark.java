package plumbline.syntax;

import java.util.List;

/** The marks at which a pager waits for a key, as captures of terminals keep them. */
final class PagerMark {
  private static final List<String> MARKS =
      List.of("--More--", "-- More --", "<--- More --->", "---- More ----", "More: <space>");

  private PagerMark() {}

  /** The length of the mark that stands at {@code begin}; 0 where none does. */
  static int length(String text, int begin, int end) {
    if (begin >= end) {
      return 0;
    }
    char first = text.charAt(begin);
    if (first != '-' && first != '<' && first != 'M') {
      return 0;
    }
    for (String mark : MARKS) {
      if (begin + mark.length() <= end && text.regionMatches(true, begin, mark, 0, mark.length())) {
        // This mark goes on with its keys to the end of the line.
        return mark.startsWith("More") ? end - begin : mark.length();
      }
    }
    return 0;
  }
}
