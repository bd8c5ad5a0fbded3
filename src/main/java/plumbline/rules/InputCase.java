package plumbline.rules;

import java.time.Instant;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;

/** One thing that a run was given to read, or should have been given. */
public sealed interface InputCase {
  /** The design that the run holds the inputs against. */
  Design design();

  /**
   * A switch of the design without a config.
   *
   * @param design the whole design
   * @param designed the switch
   */
  record Missing(Design design, DesignSwitch designed) implements InputCase {}

  /**
   * A file that could not be read.
   *
   * @param design the whole design
   * @param file as typed
   * @param designed the switch that its name stands for, if any
   * @param reason a clause for the reader
   */
  record Unread(Design design, String file, Optional<DesignSwitch> designed, String reason)
      implements InputCase {}

  /**
   * A config that was read.
   *
   * @param design the whole design
   * @param designed the switch that it is of, if the design has it
   * @param settings what it says
   * @param at when the run is said to be
   */
  record Read(Design design, Optional<DesignSwitch> designed, SwitchSettings settings, Instant at)
      implements InputCase {
    /** Name of the switch in the design, or the config's where the design has none. */
    public String name() {
      return designed.map(DesignSwitch::name).orElse(settings.name());
    }

    /** Whether the text says anything of a switch; otherwise it is no config. */
    public boolean isConfig() {
      return InputCase.isConfig(settings);
    }

    /** The switch as a whole. */
    public Subject subject() {
      return Subject.ofSwitch(name());
    }
  }

  /** Whether a text says anything of a switch; otherwise it is no config. */
  static boolean isConfig(SwitchSettings settings) {
    return settings.known() > 0 || settings.hostname().value().isPresent();
  }
}
