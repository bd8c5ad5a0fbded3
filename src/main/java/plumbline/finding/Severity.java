package plumbline.finding;

import java.util.Locale;
import java.util.Optional;

/** How much a finding hurts, worst first. */
public enum Severity {
  /** Something the design promises does not work now. */
  BREAKS,
  /** It works now; a promised protection is gone. */
  WEAKENS,
  /** The text given cannot decide it. */
  UNVERIFIED,
  /** Differs from the design without effect on traffic. */
  UNTIDY;

  /** The severity of that name. */
  public static Optional<Severity> named(String word) {
    for (Severity severity : values()) {
      if (severity.toString().equals(word)) {
        return Optional.of(severity);
      }
    }
    return Optional.empty();
  }

  /** Says whether this is as bad as the other, or worse. */
  public boolean reaches(Severity other) {
    return compareTo(other) <= 0;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
