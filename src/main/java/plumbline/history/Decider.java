package plumbline.history;

import plumbline.result.ClearedBy;

/** Tells what became of a finding that a run has not. */
public interface Decider {
  /** What became of it. */
  sealed interface Fate {
    /**
     * It is gone.
     *
     * @param by what took it away
     */
    record Cleared(ClearedBy by) implements Fate {}

    /**
     * It may still be there.
     *
     * @param why a clause for readers
     */
    record Unchecked(String why) implements Fate {}
  }

  /**
   * What became of a finding.
   *
   * @param past one that the run before had, and this one has not
   * @param before the run before
   */
  Fate of(PastFinding past, PastRun before);

  /**
   * Whether the run looked at all that there is. One that did not may find a difference less bad
   * than it is, for it does not see what else depends on it: that alone is no change.
   */
  boolean sawAll();
}
