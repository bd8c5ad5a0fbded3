package plumbline.audit;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;

/**
 * Everything that an audit looks at.
 *
 * @param design the design
 * @param configs configs that were read
 * @param missing switches in scope without a config
 * @param unread files that could not be read
 * @param at when the run is said to be
 */
public record AuditInput(
    Design design,
    List<AuditedConfig> configs,
    List<MissingConfig> missing,
    List<UnreadConfig> unread,
    Instant at) {
  /** Copies the lists. */
  public AuditInput {
    configs = List.copyOf(configs);
    missing = List.copyOf(missing);
    unread = List.copyOf(unread);
  }

  /**
   * A config that was read.
   *
   * @param designed the switch of the design that it is of, if the design has it
   * @param settings what it says
   */
  public record AuditedConfig(Optional<DesignSwitch> designed, SwitchSettings settings) {}

  /**
   * A switch in scope without a config.
   *
   * @param designed the switch
   */
  public record MissingConfig(DesignSwitch designed) {}

  /**
   * A file that could not be read.
   *
   * @param file as typed
   * @param designed the switch that its name stands for, if any
   * @param reason a clause for the reader, such as {@code binary}
   */
  public record UnreadConfig(String file, Optional<DesignSwitch> designed, String reason) {}
}
