package plumbline.result;

/** What took a finding away. */
public enum ClearedBy {
  /** The config is another, and the design is not. */
  CONFIG("config", "the config changed"),
  /** The design is another, and the config is not; or the place is not in the design any more. */
  DESIGN("design", "the design changed"),
  /** Both are others, or it is not known. */
  CONFIG_OR_DESIGN("config-or-design", "the config changed or the design did"),
  /** The design switches the rule off. */
  SILENCED("rule-silenced", "the design switches its rule off now: it may still differ"),
  /** The file of waivers is another. */
  WAIVERS("waivers", "the waivers changed"),
  /** Neither config nor design is another. */
  NEITHER("neither", "no config changed and the design did not: it is judged otherwise now");

  private final String word;
  private final String clause;

  ClearedBy(String word, String clause) {
    this.word = word;
    this.clause = clause;
  }

  /** A clause for readers. */
  public String clause() {
    return clause;
  }

  /** The word in JSON. */
  @Override
  public String toString() {
    return word;
  }
}
