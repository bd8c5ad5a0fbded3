package plumbline.finding;

import java.util.Objects;
import java.util.Optional;
import plumbline.vlan.VlanId;

/**
 * Something that a finding takes from somebody.
 *
 * @param who a host, a device behind a port, a switch's management address, or a service
 * @param vlan the VLAN in which it is taken; empty for a service
 * @param loss what is taken
 * @param failure the single failure that takes it, as the subject of a sentence; empty where it is
 *     gone now
 */
public record Affected(String who, Optional<VlanId> vlan, Loss loss, Optional<String> failure) {
  /** Refuses missing parts. */
  public Affected {
    Objects.requireNonNull(who);
    Objects.requireNonNull(vlan);
    Objects.requireNonNull(loss);
    Objects.requireNonNull(failure);
  }

  /** What can be taken. */
  public enum Loss {
    /** So many members that the service stops. */
    SERVICE("service"),
    /** The VLAN itself. */
    VLAN("vlan"),
    /** Every gateway of the VLAN. */
    GATEWAY("gateway"),
    /** The rest of the VLAN's broadcast domain. */
    DOMAIN("domain"),
    /** Every gateway of the VLAN, for what is sent through one port of several. */
    PORT_GATEWAY("gateway through one port"),
    /** The rest of the VLAN's broadcast domain, for what is sent through one port of several. */
    PORT_DOMAIN("domain through one port");

    private final String words;

    Loss(String words) {
      this.words = words;
    }

    @Override
    public String toString() {
      return words;
    }
  }
}
