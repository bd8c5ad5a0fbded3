package plumbline.syntax;

/**
 * Something in a capture that tells where a switch's text begins or ends, or what it is.
 *
 * @param line its line, counted from 0
 * @param kind what it is
 * @param text host, name or number that goes with it; may be empty
 */
record Mark(int line, Kind kind, String text) {
  /** What can be told. */
  enum Kind {
    /** A prompt; the text is the host. */
    PROMPT,
    /** A prompt of a config mode; the text is the host. */
    CONFIG_PROMPT,
    /** A statement that names the switch; the text is the name. */
    HOSTNAME,
    /** An echoed command that shows a whole config. */
    WHOLE_ECHO,
    /** An echoed command that shows part of a config; the text says whether it may be all. */
    PART_ECHO,
    /** A line that only a dump has near its top. */
    START,
    /** The same, of a dialect whose dumps close with {@code end}. */
    START_OF_ENDING,
    /** A size line; the text is the number of bytes. */
    SIZE,
    /** The line {@code end}. */
    END,
    /** A command that opens the config mode. */
    CONFIGURE,
    /** A banner that nothing closes. */
    OPEN_BANNER,
    /** A certificate or key that stops with the text. */
    OPEN_BLOB
  }
}
