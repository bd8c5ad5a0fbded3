package plumbline.syntax;

import java.util.List;
import plumbline.statement.SwitchText;

/** Reads config text for the tests of other packages. */
public final class TextReader {
  private static final StatementParser PARSER = new StatementParser();

  private TextReader() {}

  /** The switches of one file. */
  public static List<SwitchText> read(String text) {
    return new ConfigReader(PARSER).read("sw1.cfg", "sw1", text);
  }
}
