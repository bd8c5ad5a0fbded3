package plumbline.rules;

/** A rule about a port that the design covers. */
public non-sealed interface PortRule extends Rule {
  /** Judges one port. */
  void check(PortCase port, Outcomes outcomes);
}
