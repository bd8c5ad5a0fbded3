package plumbline.text;

/** Cells of tables that may be opened in a spreadsheet. */
public final class Cells {
  private Cells() {}

  /**
   * The text, marked as text with an apostrophe where a spreadsheet would take it for a formula:
   * where it begins with {@code = + - @}, a tab or a carriage return (common practice, no source).
   */
  public static String neutral(String text) {
    return !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
  }
}
