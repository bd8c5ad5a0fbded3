package plumbline.result;

import java.util.Locale;

/**
 * What a run comes to in one word, and its counts.
 *
 * @param result the word
 * @param breaks findings of that severity
 * @param weakens findings of that severity
 * @param unverified findings of that severity
 * @param untidy findings of that severity
 * @param waived findings that are waived, outside the other counts
 * @param checked subjects checked over all rules
 */
public record Verdict(
    Word result, int breaks, int weakens, int unverified, int untidy, int waived, int checked) {
  /** The words. */
  public enum Word {
    /** Nothing differs and nothing is undecided, untidy things aside. */
    CONFORMS,
    /** A finding reaches the severity at which a run fails. */
    DRIFT,
    /** No drift, and something could not be decided or audited, or nothing was checked. */
    INCOMPLETE;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
