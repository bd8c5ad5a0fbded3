package plumbline.design;

import java.util.List;
import java.util.Optional;
import plumbline.yaml.Position;

/**
 * A switch or an outside router that routes some VLANs.
 *
 * @param name name of the switch, or of the outside router
 * @param outside the switch ports that an outside router is behind; empty for a switch
 * @param vlans what it routes
 * @param at where it is declared
 */
public record DesignGateway(
    String name, List<DesignPort> outside, List<Served> vlans, Position at) {
  /** Copies the lists. */
  public DesignGateway {
    outside = List.copyOf(outside);
    vlans = List.copyOf(vlans);
  }

  /**
   * A VLAN that it routes.
   *
   * @param vlan which
   * @param address the address it must have there
   * @param active whether it must be the active one of its group
   * @param at where that is said
   */
  public record Served(
      DesignVlan vlan, Optional<String> address, Optional<Boolean> active, Position at) {}
}
