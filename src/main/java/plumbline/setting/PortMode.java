package plumbline.setting;

import java.util.Locale;

/** What a port does with frames. */
public enum PortMode {
  /** One VLAN, untagged. */
  ACCESS,
  /** Many VLANs, tagged, and one native VLAN. */
  TRUNK,
  /** No bridging: an address of its own or none. */
  ROUTED,
  /** Left to negotiation with the other end. */
  NEGOTIATED,
  /** A mode that carries frames in a way this program does not model (private VLANs, tunnels). */
  OTHER;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
