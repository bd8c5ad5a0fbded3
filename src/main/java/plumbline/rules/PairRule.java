package plumbline.rules;

/** A rule about two ports of a host that back each other up. */
public non-sealed interface PairRule extends Rule {
  /** Judges one pair, both ends of which were read. */
  void check(PairCase pair, Outcomes outcomes);
}
