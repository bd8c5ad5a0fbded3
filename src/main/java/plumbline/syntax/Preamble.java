package plumbline.syntax;

import java.util.OptionalLong;

/**
 * A line that a switch prints before it shows a config.
 *
 * @param bytes how long the config is, where the line says so
 */
record Preamble(OptionalLong bytes) {
  private static final String UNPACKED = "uncompressed size = ";

  /** Reads such a line: {@code Current configuration : 4276 bytes} or {@code Using 1234 out of}. */
  static Preamble of(String content) {
    int unpacked = content.indexOf(UNPACKED);
    int colon = content.indexOf(':');
    int from =
        unpacked >= 0
            ? unpacked + UNPACKED.length()
            : Shapes.startsWith(content, "Using ") ? 6 : colon < 0 ? content.length() : colon + 1;
    int begin = from;
    while (begin < content.length() && content.charAt(begin) == ' ') {
      begin++;
    }
    int end = begin;
    while (end < content.length() && Character.isDigit(content.charAt(end))) {
      end++;
    }
    boolean number = end > begin && end - begin <= 12;
    return new Preamble(
        number
            ? OptionalLong.of(Long.parseLong(content.substring(begin, end)))
            : OptionalLong.empty());
  }
}
