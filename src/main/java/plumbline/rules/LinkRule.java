package plumbline.rules;

/** A rule about both ends of a link between two switches of the design. */
public non-sealed interface LinkRule extends Rule {
  /** Judges one link, both ends of which were read. */
  void check(LinkCase link, Outcomes outcomes);
}
