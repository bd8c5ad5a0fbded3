package plumbline.statement;

import java.util.List;
import plumbline.setting.Evidence;

/**
 * A statement at its place.
 *
 * @param meaning what it says
 * @param context the block it stands in
 * @param line 1-based first line
 * @param lastLine 1-based last line, at least {@code line}
 * @param column 1-based column of its first character
 */
public record Statement(Meaning meaning, Context context, int line, int lastLine, int column) {
  /** Refuses impossible places. */
  public Statement {
    if (line < 1 || lastLine < line || column < 1) {
      throw new IllegalArgumentException("no such place: " + line + "-" + lastLine + ":" + column);
    }
  }

  /** Sets, removes or restores the default. */
  public Form form() {
    return meaning.form();
  }

  /** What it names. */
  public Command command() {
    return meaning.command();
  }

  /** The same, read as harmless where it is unknown and fits a pattern. */
  Statement vouching(List<String> patterns) {
    if (command() instanceof Command.Unknown unknown
        && patterns.stream().anyMatch(unknown.text()::matches)) {
      Command harmless = new Command.Harmless(unknown.firstWord());
      return new Statement(
          new Meaning(form(), harmless, meaning.quote()), context, line, lastLine, column);
    }
    return this;
  }

  /** The statement as evidence. */
  public Evidence.Line evidence() {
    return new Evidence.Line(line, meaning.quote());
  }
}
