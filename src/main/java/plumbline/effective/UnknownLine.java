package plumbline.effective;

import java.util.Objects;

/**
 * A statement that the grammar does not know.
 *
 * @param line 1-based line
 * @param firstWord its first word, masked where it looks like a secret
 */
public record UnknownLine(int line, String firstWord) {
  /** Refuses missing parts. */
  public UnknownLine {
    Objects.requireNonNull(firstWord);
  }
}
