package plumbline.window;

import java.util.Objects;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Setting;
import plumbline.statement.LineMarks;

/**
 * A switch before or after the window.
 *
 * @param settings what its text says
 * @param marks tells equal lines of the text from others
 * @param lines what of the text is in no setting that is compared
 */
public record Side(SwitchSettings settings, LineMarks marks, OtherLines lines) {
  /** Refuses missing parts. */
  public Side {
    Objects.requireNonNull(settings);
    Objects.requireNonNull(marks);
    Objects.requireNonNull(lines);
  }

  /** Whether a setting is open because the whole text is silent or breaks off. */
  boolean isLeftOpen(Setting<?> setting) {
    return settings.isSilent(setting) || settings.isCutOff(setting);
  }

  /** Whether much of what the switch does is not in the text. */
  boolean isPart() {
    return settings.script() || settings.truncation().isPresent();
  }
}
