package plumbline.fabric;

import java.util.Optional;
import plumbline.setting.PortMode;

/**
 * How one end of a link goes about trunking, and what two ends make of it together. The table is
 * that of the campus dialect's documentation (common practice, no open source): who asks becomes a
 * trunk with everybody who asks, answers or trunks and sends frames.
 */
public enum Trunking {
  /** Always an access port. */
  ACCESS(PortMode.ACCESS),
  /** Always a trunk, and says so to the other end. */
  TRUNK(PortMode.TRUNK),
  /** Always a trunk, in silence. */
  SILENT_TRUNK(PortMode.TRUNK),
  /** Becomes a trunk when the other end wants one; asks for none. */
  ANSWERS(PortMode.NEGOTIATED),
  /** Asks the other end for a trunk. */
  ASKS(PortMode.NEGOTIATED);

  private final PortMode mode;

  Trunking(PortMode mode) {
    this.mode = mode;
  }

  /**
   * The mode that this end ends up in.
   *
   * @param far the other end; empty where a host or nothing that negotiates is there
   */
  public PortMode towards(Optional<Trunking> far) {
    return mode == PortMode.NEGOTIATED ? negotiated(far) : mode;
  }

  private PortMode negotiated(Optional<Trunking> far) {
    boolean trunks =
        far.filter(other -> other.speaksForTrunk() || (other == ANSWERS && this == ASKS))
            .isPresent();
    return trunks ? PortMode.TRUNK : PortMode.ACCESS;
  }

  private boolean speaksForTrunk() {
    return this == TRUNK || this == ASKS;
  }
}
