package plumbline.setting;

import java.util.Locale;

/** Whether a protection works on a port. */
public enum Effect {
  /** It works. */
  ON,
  /** It does not. */
  OFF,
  /** It is configured, and something else on the port takes its effect away. */
  WITHOUT_EFFECT;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
