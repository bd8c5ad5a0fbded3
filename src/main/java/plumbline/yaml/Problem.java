package plumbline.yaml;

/**
 * Something wrong in an input file.
 *
 * @param at the word it is about
 * @param message one sentence without full stop: what was found, what was expected
 */
public record Problem(Position at, String message) implements Comparable<Problem> {
  @Override
  public int compareTo(Problem other) {
    int byPlace = at.compareTo(other.at);
    return byPlace != 0 ? byPlace : message.compareTo(other.message);
  }

  /** GNU form: {@code file:line:column: message}. */
  @Override
  public String toString() {
    return at + ": " + message;
  }
}
