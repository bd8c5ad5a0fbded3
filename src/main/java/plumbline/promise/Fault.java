package plumbline.promise;

import plumbline.fabric.VlanGraph.Point;
import plumbline.vlan.VlanId;

/** A place where a VLAN passes by design and does not as the configs stand. */
public sealed interface Fault {
  /** The VLAN. */
  VlanId vlan();

  /**
   * The ends of a link.
   *
   * @param link index of the link in the network
   */
  record OfLink(VlanId vlan, int link) implements Fault {}

  /**
   * The cables of a bundle.
   *
   * @param link index of the link in the network
   */
  record OfBundle(VlanId vlan, int link) implements Fault {}

  /**
   * A port with something that is no switch behind it.
   *
   * @param point the port
   */
  record OfPlug(VlanId vlan, Point point) implements Fault {}

  /**
   * A switch as a whole, which lacks the VLAN.
   *
   * @param name its name
   */
  record OfSwitch(VlanId vlan, String name) implements Fault {}

  /**
   * A gateway.
   *
   * @param name name of the switch, or of the outside router
   */
  record OfRouter(VlanId vlan, String name) implements Fault {}
}
