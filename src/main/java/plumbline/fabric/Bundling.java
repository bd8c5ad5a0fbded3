package plumbline.fabric;

import plumbline.setting.Bundle;

/** Whether two ends of a cable form a bundle. */
public final class Bundling {
  private Bundling() {}

  /**
   * Whether the modes fit: LACP where one end speaks (IEEE 802.1AX, LACP activity), without
   * negotiation where both ends are static (common practice, no source), the proprietary
   * negotiation where one end speaks it.
   */
  public static boolean forms(Bundle.Mode one, Bundle.Mode other) {
    if (one.isLacp() && other.isLacp()) {
      return one == Bundle.Mode.ACTIVE || other == Bundle.Mode.ACTIVE;
    }
    if (isProprietary(one) && isProprietary(other)) {
      return one == Bundle.Mode.DESIRABLE || other == Bundle.Mode.DESIRABLE;
    }
    return one == Bundle.Mode.STATIC && other == Bundle.Mode.STATIC;
  }

  private static boolean isProprietary(Bundle.Mode mode) {
    return mode == Bundle.Mode.DESIRABLE || mode == Bundle.Mode.AUTO;
  }
}
