package plumbline.text;

import java.util.regex.Pattern;

/** Cells of tables that may be opened in a spreadsheet. */
public final class Cells {
  /**
   * Where a spreadsheet may see the beginning of a formula (common practice, no source): before
   * {@code = + - @} and their wide forms, also behind blanks and quotes, before a tab or a line
   * break; and the same behind a semicolon, for there the next cell begins in many countries.
   */
  private static final Pattern FORMULA =
      Pattern.compile(
          "(\\A(?=[\\t\\r\\n])|(?:\\A|;)(?=[\\s\"]*[=+\\-@\\x{ff1d}\\x{ff0b}\\x{ff0d}\\x{ff20}]))");

  private Cells() {}

  /** The text, with an apostrophe that marks it as text wherever a formula could begin. */
  public static String neutral(String text) {
    return FORMULA.matcher(text).replaceAll("$1'");
  }
}
