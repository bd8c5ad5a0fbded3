package plumbline.effective;

import java.util.Objects;
import plumbline.text.HiddenText;

/**
 * A statement that the grammar does not know.
 *
 * @param line 1-based line
 * @param firstWord its first word, masked where it looks like a secret
 * @param text all of it, which may hold a secret
 */
public record UnknownLine(int line, String firstWord, HiddenText text) {
  /** Refuses missing parts. */
  public UnknownLine {
    Objects.requireNonNull(firstWord);
    Objects.requireNonNull(text);
  }

  /** A statement of which only the first word is left. */
  public UnknownLine(int line, String firstWord) {
    this(line, firstWord, HiddenText.NONE);
  }
}
