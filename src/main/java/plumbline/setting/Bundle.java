package plumbline.setting;

import java.util.Locale;

/**
 * A member port's place in a bundle (link aggregation, IEEE 802.1AX).
 *
 * @param id the bundle's number
 * @param mode how the bundle forms
 */
public record Bundle(int id, Mode mode) {
  /** How the bundle forms. */
  public enum Mode {
    /** Negotiates with LACP and always speaks. */
    ACTIVE,
    /** Negotiates with LACP and answers only. */
    PASSIVE,
    /** No negotiation: both ends are set. */
    STATIC,
    /** A proprietary negotiation, speaking. */
    DESIRABLE,
    /** A proprietary negotiation, answering. */
    AUTO;

    /** Says whether the mode speaks LACP. */
    public boolean isLacp() {
      return this == ACTIVE || this == PASSIVE;
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Override
  public String toString() {
    return id + " " + mode;
  }
}
