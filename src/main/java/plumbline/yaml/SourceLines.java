package plumbline.yaml;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;

/** Finds places in a text, and the characters that no design may hold. */
final class SourceLines {
  private final String file;
  private final String text;
  private int[] starts = new int[64];
  private int count = 1;

  SourceLines(String file, String text) {
    this.file = file;
    this.text = text;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean inPair = c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n';
      if ((c == '\n' || c == '\r') && !inPair) {
        if (count == starts.length) {
          starts = Arrays.copyOf(starts, 2 * count);
        }
        starts[count++] = i + 1;
      }
    }
  }

  /** The character at a place, empty behind the last of the line. */
  OptionalInt characterAt(int line, int column) {
    if (line > count) {
      return OptionalInt.empty();
    }
    int index = starts[line - 1];
    for (int passed = 1; passed < column && index < text.length(); passed++) {
      index += Character.charCount(text.codePointAt(index));
    }
    return index < text.length() ? OptionalInt.of(text.codePointAt(index)) : OptionalInt.empty();
  }

  /**
   * The first run of blanks, or of anything else, that is longer than the limit: the YAML parser
   * takes time in the square of it.
   */
  Optional<Problem> firstEndless(int limit) {
    int start = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      char last = text.charAt(start);
      boolean sameKind = isBlank(c) == isBlank(last) && isLineEnd(c) == isLineEnd(last);
      if (!sameKind) {
        start = i;
      } else if (i - start >= limit && !isLineEnd(c)) {
        return Optional.of(
            new Problem(
                placeOf(start),
                (isBlank(c)
                        ? "more than " + limit + " blanks"
                        : "a word of more than " + limit + " characters")
                    + " in a line; expected a design (JSON without blanks needs the ending .json)"));
      }
    }
    return Optional.empty();
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t';
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  /** The first character that is neither printable nor a blank nor a line end. */
  Optional<Problem> firstForbidden() {
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      if (isForbidden(c)) {
        return Optional.of(
            new Problem(
                placeOf(i),
                String.format(
                    "the character U+%04X cannot stand in a design; expected plain text", c)));
      }
      i += Character.charCount(c);
    }
    return Optional.empty();
  }

  private static boolean isForbidden(int c) {
    if (c < 0x20) {
      return c != '\t' && c != '\n' && c != '\r';
    }
    // U+0085, U+2028 and U+2029 end a line for some programs and not for others.
    return (c >= 0x7f && c < 0xa0)
        || c == 0x2028
        || c == 0x2029
        || c == 0xfeff
        || c == 0xfffe
        || c == 0xffff
        || (c >= 0xd800 && c < 0xe000);
  }

  private Position placeOf(int index) {
    int found = Arrays.binarySearch(starts, 0, count, index);
    int line = found >= 0 ? found : -found - 2;
    return new Position(file, line + 1, text.codePointCount(starts[line], index) + 1);
  }
}
