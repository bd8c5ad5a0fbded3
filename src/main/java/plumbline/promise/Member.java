package plumbline.promise;

import java.util.List;
import plumbline.vlan.VlanId;

/**
 * Something that needs a VLAN.
 *
 * @param name its name, as the object of a sentence
 * @param kind what it is
 * @param vlan the VLAN
 * @param plugs where it meets it
 */
public record Member(String name, Kind kind, VlanId vlan, List<Plug> plugs) {
  /** Copies the list. */
  public Member {
    plugs = List.copyOf(plugs);
  }

  /** Kinds of members. */
  public enum Kind {
    /** A host, with all its ports that need the VLAN. */
    HOST,
    /** What is behind a port of a switch's port sheet. */
    DEVICE,
    /** A link that leaves the design. */
    OUTSIDE,
    /** The management address of a switch. */
    MANAGEMENT
  }
}
