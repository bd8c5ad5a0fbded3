package plumbline.syntax;

import java.util.List;
import plumbline.statement.Context;
import plumbline.statement.Meaning;
import plumbline.statement.SwitchText;

/** Reads config text for the tests of other packages. */
public final class TextReader {
  private static final StatementParser PARSER = new StatementParser();

  private TextReader() {}

  /** The switches of one file. */
  public static List<SwitchText> read(String text) {
    StatementSource source =
        new StatementSource() {
          @Override
          public Meaning read(Context context, String statement) {
            return PARSER.read(context, statement);
          }

          @Override
          public boolean mayStart(Context context, String firstWord) {
            return PARSER.mayStart(context, firstWord);
          }
        };
    return new ConfigReader(source).read("sw1.cfg", "sw1", text);
  }
}
