package plumbline.window;

import java.util.Optional;
import plumbline.setting.Truth;
import plumbline.yaml.Position;

/**
 * What a design says of a point.
 *
 * @param words in words
 * @param value as a value: equal values are the same aim, in whatever design they stand
 * @param before whether it was so before the window
 * @param after whether it is so after the window
 * @param at where the design says so; empty where several places do
 */
record Aim(String words, Object value, Truth before, Truth after, Optional<Position> at) {
  /** An aim that no single place of the design states. */
  static Aim of(String words, Object value, Truth before, Truth after) {
    return new Aim(words, value, before, after, Optional.empty());
  }
}
