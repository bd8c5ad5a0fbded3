package plumbline.statement;

import java.util.Objects;

/**
 * The text of one switch with a mark for each of its lines.
 *
 * @param text the statements
 * @param marks the marks of the lines from the first to the last of the text
 */
public record MarkedText(SwitchText text, LineMarks marks) {
  /** Refuses missing parts. */
  public MarkedText {
    Objects.requireNonNull(text);
    Objects.requireNonNull(marks);
  }
}
