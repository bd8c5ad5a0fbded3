package plumbline.window;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.effective.SpanningTree.Priority.Asked;
import plumbline.result.Change;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/** Values as words, and which of them mean the same. */
final class Values {
  /** Port priority where no line sets one (RFC 4188, {@code dot1dStpPortPriority}). */
  private static final int PORT_PRIORITY = 128;

  private Values() {}

  /**
   * A bridge priority.
   *
   * @param value 0..61440
   * @param asked how it was asked for
   */
  record Priority(int value, Asked asked) {
    @Override
    public String toString() {
      return asked == Asked.NUMBER
          ? Integer.toString(value)
          : value + " (" + asked.name().toLowerCase(Locale.ROOT).replace('_', ' ') + ")";
    }
  }

  /** The value in words; empty where nothing is set. */
  static Optional<String> words(Setting<?> setting) {
    return setting.isDecided() ? setting.value().map(Values::words) : Optional.of(Change.UNKNOWN);
  }

  private static String words(Object value) {
    if (value instanceof Boolean flag) {
      return flag ? "yes" : "no";
    }
    return value instanceof List<?> list
        ? String.join(", ", list.stream().map(Object::toString).toList())
        : value.toString();
  }

  /**
   * What a decided setting comes to: nothing where it is what holds without a line, so that a
   * default that is typed out is no change.
   */
  static Optional<?> meaning(Point point, Setting<?> setting) {
    return setting.value().filter(value -> !isDefault(point, value));
  }

  private static boolean isDefault(Point point, Object value) {
    if (value instanceof Boolean flag) {
      return !flag;
    }
    if (value.equals(Effect.OFF)) {
      return true;
    }
    return switch (point.setting()) {
      case "link-type", "speed", "duplex" -> value.equals("auto");
      case "qos-trust" -> value.equals("none");
      case "min-links" -> value.equals(1);
      case Point.VLAN_NAME ->
          point.vlans().ids().anyMatch(id -> value.equals(String.format("VLAN%04d", id)));
      default ->
          point.key().filter(Keys.STP_PORT_PRIORITY::equals).isPresent()
              && value.equals(PORT_PRIORITY);
    };
  }
}
