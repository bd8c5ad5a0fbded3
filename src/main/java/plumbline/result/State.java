package plumbline.result;

import java.util.Locale;
import java.util.Optional;

/** What became of a finding since the run before. */
public enum State {
  /** The run before had no such finding. */
  NEW,
  /** It was there, about other VLANs or at another severity. */
  CHANGED,
  /** It was there, the same. */
  STANDING,
  /** It was there, and this run could not tell whether it still is. */
  UNCHECKED,
  /** It was there and is gone. */
  CLEARED;

  /** The state of that name. */
  public static Optional<State> named(String word) {
    for (State state : values()) {
      if (state.toString().equals(word)) {
        return Optional.of(state);
      }
    }
    return Optional.empty();
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
