package plumbline.fabric;

import java.util.OptionalInt;

/** A single thing of the network that fails. */
public sealed interface Failure {
  /** Nothing fails. */
  record None() implements Failure {}

  /**
   * A switch, or one member of a stack.
   *
   * @param name the switch
   * @param member the member; empty for a switch that is no stack
   */
  record OfSwitch(String name, OptionalInt member) implements Failure {}

  /**
   * A link with all its cables.
   *
   * @param link index of the link in the fabric
   */
  record OfLink(int link) implements Failure {}

  /**
   * One cable of a bundle.
   *
   * @param link index of the link in the fabric
   * @param cable index of the cable in the link
   */
  record OfCable(int link, int cable) implements Failure {}
}
