package plumbline.design;

import plumbline.port.PortName;
import plumbline.yaml.Position;

/**
 * A port that the design covers.
 *
 * @param switchName name of the switch in the design
 * @param port canonical name
 * @param role what it must look like
 * @param subject what is behind it, in words, stable over runs: {@code vmhost-n1 nic0}, {@code link
 *     to north-sw2 Port-channel1}, {@code desk-phone}
 * @param place where in the design it has its place
 * @param at the word that names it
 */
public record DesignPort(
    String switchName, PortName port, Role role, String subject, Place place, Position at) {
  /** Where in a design a port has its place. */
  public enum Place {
    /** A host's port goes there. */
    HOST,
    /** A link between switches, or one that leaves the design, ends there. */
    LINK,
    /** It is a member of a link's bundle. */
    MEMBER,
    /** The switch's port sheet lists it. */
    SHEET,
    /** A gateway that is no audited switch is behind it. */
    GATEWAY
  }
}
