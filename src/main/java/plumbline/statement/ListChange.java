package plumbline.statement;

/** How a list statement changes the list that stands. */
public enum ListChange {
  /** Replaces it. */
  SET,
  /** Adds to it. */
  ADD,
  /** Takes from it. */
  REMOVE,
  /** Replaces it by all but the operand. */
  EXCEPT,
  /** Replaces it by all. */
  ALL,
  /** Replaces it by nothing. */
  NONE
}
