package plumbline.fabric;

import java.util.OptionalInt;
import plumbline.port.PortName;
import plumbline.vlan.VlanId;

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

  /**
   * The cable of a thing that is no switch, at the switch port that it ends on.
   *
   * @param switchName the switch
   * @param port its port
   */
  record OfPort(String switchName, PortName port) implements Failure {}

  /**
   * A host.
   *
   * @param name its name
   */
  record OfHost(String name) implements Failure {}

  /**
   * A gateway, for all VLANs that it routes.
   *
   * @param name name of the switch, or of the outside router
   */
  record OfGateway(String name) implements Failure {}

  /**
   * A VLAN everywhere.
   *
   * @param vlan the VLAN
   */
  record OfVlan(VlanId vlan) implements Failure {}
}
