package plumbline.window;

import java.util.Objects;

/**
 * One switch on both sides of the window.
 *
 * @param name its name in the design, or the config's where the design has none
 * @param before before the window
 * @param after after the window
 */
public record SwitchWindow(String name, Side before, Side after) {
  /** Refuses missing parts. */
  public SwitchWindow {
    Objects.requireNonNull(name);
    Objects.requireNonNull(before);
    Objects.requireNonNull(after);
  }

  /** A switch that the window did not touch. */
  public static SwitchWindow untouched(String name, Side side) {
    return new SwitchWindow(name, side, side);
  }
}
