package plumbline.text;

/**
 * A page of text for a terminal, written from top to bottom. Everything handed in is cleaned of
 * control characters; colour, where it is wanted, never carries meaning of its own.
 */
public final class Page {
  /** A mark that leaves fewer columns than these beside it has its words below it. */
  private static final int LEAST_BESIDE = 24;

  /**
   * How a page looks.
   *
   * @param colour whether inks show
   * @param width the width of every line, in columns, from {@link Look#NARROWEST} to {@link
   *     Look#WIDEST}
   */
  public record Look(boolean colour, int width) {
    /** No margin and no mark leaves room for words on a narrower page. */
    public static final int NARROWEST = 60;

    /** Longer lines are hard to read. */
    public static final int WIDEST = 120;

    /** The width where nothing tells another one. */
    public static final int USUAL = 80;

    /** Brings the width within its bounds. */
    public Look {
      width = Math.max(NARROWEST, Math.min(WIDEST, width));
    }

    /** A page of the usual width. */
    public static Look usual(boolean colour) {
      return new Look(colour, USUAL);
    }
  }

  /** How a piece of text stands out, on terminals that colour. */
  public enum Ink {
    /** As it comes. */
    PLAIN(""),
    /** A heading. */
    STRONG("1"),
    /** Something is broken. */
    ALARM("1;31"),
    /** Something is weaker than designed. */
    CAUTION("1;33"),
    /** Something is not known. */
    DOUBT("1;36"),
    /** All is well. */
    WELL("1;32");

    private final String code;

    Ink(String code) {
      this.code = code;
    }
  }

  private final StringBuilder text = new StringBuilder();
  private final Look look;

  /** An empty page. */
  public Page(Look look) {
    this.look = look;
  }

  /**
   * An empty page of the usual width.
   *
   * @param colour whether inks show
   */
  public Page(boolean colour) {
    this(Look.usual(colour));
  }

  /** Ends a paragraph with an empty line. */
  public Page gap() {
    text.append('\n');
    return this;
  }

  /** Writes a paragraph, wrapped; further lines start under the first. */
  public Page paragraph(String words) {
    return hanging("", words);
  }

  /** Writes a paragraph behind a margin that stands only before the first line. */
  public Page hanging(String margin, String words) {
    return hanging(margin, " ".repeat(Display.width(margin)), words);
  }

  /** Writes one entry of a list, indented; further lines are indented more. */
  public Page item(String words) {
    String line = Display.clean(words).strip().replaceAll(" +", " ");
    int first = Display.wrap(line, look.width() - 2).get(0).length();
    text.append("  ").append(line, 0, first).append('\n');
    return first == line.length() ? this : hanging("    ", line.substring(first));
  }

  /**
   * Writes a paragraph between margins.
   *
   * @param first margin of the first line
   * @param further margin of the other lines, as wide as the first
   */
  public Page hanging(String first, String further, String words) {
    int columns = look.width() - Display.width(first);
    String margin = first;
    for (String line : Display.wrap(Display.clean(words), columns)) {
      text.append((margin + line).stripTrailing()).append('\n');
      margin = further;
    }
    return this;
  }

  /** Writes a line that stands out as a whole. */
  public Page heading(String words) {
    return marked(Ink.STRONG, "", words, "");
  }

  /** Writes a mark that stands out and words behind it; further lines start under the words. */
  public Page marked(Ink ink, String margin, String mark, String words) {
    String clean = Display.clean(mark);
    if (Display.width(margin + clean) > look.width() - LEAST_BESIDE) {
      return words.isBlank()
          ? hanging(margin, clean)
          : hanging(margin, clean).hanging(margin + "    ", words);
    }
    String further = margin + " ".repeat(Display.width(clean));
    int start = text.length() + margin.length();
    hanging(margin + clean, further, words);
    if (look.colour() && !ink.code.isEmpty()) {
      int end = start + clean.stripTrailing().length();
      text.insert(end, "\u001b[0m").insert(start, "\u001b[" + ink.code + "m");
    }
    return this;
  }

  /** The page so far; every line ends in a line feed. */
  @Override
  public String toString() {
    return text.toString();
  }
}
