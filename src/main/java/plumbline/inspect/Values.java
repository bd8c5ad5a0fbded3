package plumbline.inspect;

import java.util.List;
import java.util.stream.Stream;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;

/** Values and evidence in words. */
final class Values {
  private Values() {}

  /** The value, {@code not set}, or {@code unknown}. */
  static String words(Setting<?> setting) {
    if (!setting.isDecided()) {
      return "unknown";
    }
    return setting.value().map(Values::words).orElse("not set");
  }

  private static String words(Object value) {
    return value instanceof Boolean flag ? yesOrNo(flag) : value.toString();
  }

  static String yesOrNo(boolean flag) {
    return flag ? "yes" : "no";
  }

  /** What the setting rests on, in one line: {@code line 41: switchport mode trunk}. */
  static String evidence(Setting<?> setting) {
    return String.join("; ", reasons(setting));
  }

  /** What the setting rests on: why it is not known, if so, then each line or default. */
  static List<String> reasons(Setting<?> setting) {
    return Stream.concat(
            setting.reason().stream(), setting.evidence().stream().map(Values::evidence))
        .toList();
  }

  private static String evidence(Evidence evidence) {
    return evidence instanceof Evidence.Line line
        ? "line " + line.line() + ": " + line.text()
        : "default, " + ((Evidence.Default) evidence).name();
  }

  /** Whether a line of the text stands behind the setting. */
  static boolean isFromText(Setting<?> setting) {
    return setting.evidence().stream().anyMatch(Evidence.Line.class::isInstance);
  }
}
