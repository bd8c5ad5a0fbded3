package plumbline.statement;

/** How a statement treats what it names. */
public enum Form {
  /** Sets it. */
  SET(""),
  /** Removes it ({@code no ...}). */
  NO("no "),
  /** Puts the built-in default back ({@code default ...}). */
  DEFAULT("default ");

  private final String prefix;

  Form(String prefix) {
    this.prefix = prefix;
  }

  /** The word before the statement, with its blank; empty for {@link #SET}. */
  public String prefix() {
    return prefix;
  }
}
