package plumbline.rules;

/** A rule about what a run was given to read. */
public non-sealed interface InputRule extends Rule {
  /** Judges one input. */
  void check(InputCase input, Outcomes outcomes);
}
