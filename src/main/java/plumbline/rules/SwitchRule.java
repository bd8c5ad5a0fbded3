package plumbline.rules;

/** A rule about a switch of the design whose config was read. */
public non-sealed interface SwitchRule extends Rule {
  /** Judges one switch. */
  void check(SwitchCase device, Outcomes outcomes);
}
