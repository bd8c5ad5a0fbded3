package plumbline.inspect;

import java.util.List;
import java.util.stream.Stream;
import plumbline.effective.PortSettings;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

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

  /** The same of a port's setting; a list whose base is missing as it is on top of the default. */
  static String words(PortSettings port, Key<?> key) {
    return key.equals(Keys.ALLOWED)
        ? port.allowedFromDefault().map(Values::onDefault).orElseGet(() -> words(port.get(key)))
        : words(port.get(key));
  }

  private static String onDefault(VlanSet list) {
    VlanSet lacking = list.complement();
    return VlanSet.ALL
        + (lacking.isEmpty() ? "" : " minus " + lacking)
        + " (unverified: its base is not in this text)";
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

  /** The same of a port's setting; what {@link #words(PortSettings, Key)} says is not repeated. */
  static List<String> reasons(PortSettings port, Key<?> key) {
    boolean said = key.equals(Keys.ALLOWED) && port.allowedFromDefault().isPresent();
    return said
        ? port.get(key).evidence().stream().map(Values::evidence).toList()
        : reasons(port.get(key));
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
