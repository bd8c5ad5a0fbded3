package plumbline.design;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.vlan.VlanId;
import plumbline.yaml.Position;

/**
 * A VLAN of the design.
 *
 * @param name its name in the design
 * @param id identifier
 * @param gateway whether it is routed
 * @param oneDomain whether it must be one broadcast domain across all switches
 * @param telephony whether phones and calls live in it
 * @param unused whether no host may live in it
 * @param filter whether its gateways must have a packet filter
 * @param apartFrom names of VLANs with which it must never share a failure or a domain
 * @param deviceName the name it must have on the switches
 * @param at where it is declared
 */
public record DesignVlan(
    String name,
    VlanId id,
    GatewayNeed gateway,
    boolean oneDomain,
    boolean telephony,
    boolean unused,
    boolean filter,
    List<String> apartFrom,
    Optional<String> deviceName,
    Position at) {
  /** Copies the list. */
  public DesignVlan {
    apartFrom = List.copyOf(apartFrom);
  }

  /** Whether a VLAN is routed. */
  public enum GatewayNeed {
    /** It must have a working gateway. */
    REQUIRED,
    /** It must have none. */
    FORBIDDEN,
    /** Either. */
    OPTIONAL;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Name and number, such as {@code voice-a (231)}. */
  @Override
  public String toString() {
    return name + " (" + id + ")";
  }
}
