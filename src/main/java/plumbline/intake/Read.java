package plumbline.intake;

/** What became of a file that was to be read. */
public sealed interface Read {
  /** The path as typed; {@code -} for standard input. */
  String file();

  /** The file's name without folder and extension. */
  String stem();

  /**
   * A file's text.
   *
   * @param file path as typed; {@code -} for standard input
   * @param stem the file's name without folder and extension
   * @param sha256 digest of the file's bytes, 64 hexadecimal digits
   * @param text the decoded text, without byte-order mark
   */
  record Text(String file, String stem, String sha256, String text) implements Read {}

  /**
   * A file that cannot be read.
   *
   * @param file path as typed
   * @param stem the file's name without folder and extension
   * @param reason a clause, such as {@code is empty}
   */
  record Failed(String file, String stem, String reason) implements Read {}
}
