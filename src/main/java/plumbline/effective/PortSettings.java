package plumbline.effective;

import java.util.List;
import java.util.Map;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Key;
import plumbline.setting.Setting;

/**
 * The effective settings of one port.
 *
 * @param name canonical name
 * @param fullName the name as the switch's dialect prints it, such as {@code GigabitEthernet1/0/1}
 * @param header the line that first opens the port
 * @param settings a setting for each key of {@link plumbline.setting.Keys#ALL}
 * @param hasSwitchingLine whether any line says something about switching (mode, VLANs, bundle)
 * @param unknown statements inside the port that the grammar does not know, in order
 */
public record PortSettings(
    PortName name,
    String fullName,
    Evidence.Line header,
    Map<Key<?>, Setting<?>> settings,
    boolean hasSwitchingLine,
    List<UnknownLine> unknown) {
  /** Copies the collections. */
  public PortSettings {
    settings = Map.copyOf(settings);
    unknown = List.copyOf(unknown);
  }

  /**
   * The setting under a key.
   *
   * @throws IllegalArgumentException if the key was not computed for this port
   */
  @SuppressWarnings("unchecked") // the computation stores each value under its own key's type
  public <T> Setting<T> get(Key<T> key) {
    Setting<?> setting = settings.get(key);
    if (setting == null) {
      throw new IllegalArgumentException("no setting " + key + " on " + fullName);
    }
    return (Setting<T>) setting;
  }
}
