package plumbline.syntax;

/** Finds blocks of encoded data: certificates, keys, sealed sections. No statement is in them. */
final class Blob {
  private Blob() {}

  /**
   * A block of encoded data.
   *
   * @param first its first line, counted from 0
   * @param end the line behind its last
   * @param closed whether its end mark was found, or something else that can follow it
   */
  record Extent(int first, int end, boolean closed) {}

  /** No block. */
  static final Extent NONE = new Extent(0, 0, true);

  /** The block that begins on a line, or below it where the line is a block's header. */
  static Extent at(CleanLines lines, int line, String content) {
    char first = content.charAt(0);
    if (first == '-' && content.startsWith("-----BEGIN ")) {
      return armoured(lines, line);
    }
    if (first == 's' && content.equals("ssd-control-start")) {
      return until(lines, line, "ssd-control-end");
    }
    boolean header =
        (first == 'c' && content.startsWith("certificate "))
            || (first == 'k' && content.equals("key-string"));
    return header || (isHexDigit(first) && isHex(content) && content.length() >= 35)
        ? encoded(lines, header ? line + 1 : line)
        : NONE;
  }

  private static Extent armoured(CleanLines lines, int line) {
    int at = line + 1;
    for (; at < lines.count(); at++) {
      String content = lines.content(at);
      if (content.startsWith("-----END ")) {
        return new Extent(line, at + 1, true);
      }
      if (!content.isEmpty() && !isBase64(content) && !isArmourHeader(content)) {
        return new Extent(line, at, true);
      }
    }
    return new Extent(line, at, false);
  }

  private static boolean isArmourHeader(String content) {
    return content.startsWith("Proc-Type:") || content.startsWith("DEK-Info:");
  }

  private static Extent until(CleanLines lines, int line, String lastWord) {
    for (int at = line; at < lines.count(); at++) {
      if (lines.content(at).startsWith(lastWord)) {
        return new Extent(line, at + 1, true);
      }
      if (Shapes.isPortHeader(lines.content(at))) {
        return new Extent(line, at, true);
      }
    }
    return new Extent(line, lines.count(), false);
  }

  private static Extent encoded(CleanLines lines, int first) {
    int at = first;
    int data = 0;
    for (; at < lines.count(); at++) {
      String content = lines.content(at);
      if (content.isEmpty()) {
        continue;
      }
      if (content.equals("quit") && data > 0) {
        return new Extent(first, at + 1, true);
      }
      if (!isHex(content) && !(content.length() >= 16 && isBase64(content))) {
        return data > 0 ? new Extent(first, at, true) : NONE;
      }
      data++;
    }
    return data > 0 ? new Extent(first, at, false) : NONE;
  }

  /** Says whether a line is groups of hexadecimal digits and nothing else. */
  private static boolean isHex(String content) {
    int run = 0;
    for (int at = 0; at < content.length(); at++) {
      char c = content.charAt(at);
      run = c == ' ' ? 0 : run + 1;
      if (c != ' ' && !isHexDigit(c)) {
        return false;
      }
    }
    return content.length() >= 2 && run > 0;
  }

  private static boolean isHexDigit(char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'F') || (c >= 'a' && c <= 'f');
  }

  private static boolean isBase64(String content) {
    return content
        .chars()
        .allMatch(c -> Character.isLetterOrDigit(c) || c == '+' || c == '/' || c == '=');
  }
}
