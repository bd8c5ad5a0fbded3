package plumbline.setting;

/** Three-valued truth: what the text given cannot decide is neither true nor false. */
public enum Truth {
  /** True for certain. */
  YES,
  /** False for certain. */
  NO,
  /** Not decided by the text. */
  UNKNOWN;

  /** The truth of something decided. */
  public static Truth of(boolean decided) {
    return decided ? YES : NO;
  }

  /** True if both are, false if either is false. */
  public Truth and(Truth other) {
    if (this == NO || other == NO) {
      return NO;
    }
    return this == YES && other == YES ? YES : UNKNOWN;
  }
}
