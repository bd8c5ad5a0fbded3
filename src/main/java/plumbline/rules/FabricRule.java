package plumbline.rules;

/** A rule about the whole network, over all switches at once. */
public non-sealed interface FabricRule extends Rule {
  /** Judges the network. */
  void check(FabricCase network, Outcomes outcomes);
}
