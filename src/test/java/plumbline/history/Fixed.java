package plumbline.history;

import plumbline.result.ClearedBy;

/** Says the same of every finding. */
record Fixed(Decider.Fate fate, boolean sawAll) implements Decider {
  static final Fixed CLEARED = new Fixed(new Fate.Cleared(ClearedBy.CONFIG), true);
  static final Fixed UNCHECKED = new Fixed(new Fate.Unchecked("it is outside this run"), false);

  @Override
  public Fate of(PastFinding past, PastRun before) {
    return fate;
  }
}
