package plumbline.run;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.port.PortName;
import plumbline.rules.InputCase;

/** The settings of configs, from arguments to what is shown. */
public final class SettingsRun {
  private SettingsRun() {}

  /**
   * One switch.
   *
   * @param name its name in the design, or the config's where the design has none
   * @param settings what its config says
   * @param designed what the design says of its ports
   */
  public record Shown(String name, SwitchSettings settings, Map<PortName, DesignPort> designed) {
    /** Copies the ports. */
    public Shown {
      designed = Map.copyOf(designed);
    }
  }

  /**
   * What came of it.
   *
   * @param switches the switches, in the order given
   * @param unread one line for each file that could not be read
   * @param skipped one line for each file of a folder that is no config
   * @param bug whether this program is to blame for one of them
   */
  public record Answer(
      List<Shown> switches, List<String> unread, List<String> skipped, boolean bug) {
    /** Copies the lists. */
    public Answer {
      switches = List.copyOf(switches);
      unread = List.copyOf(unread);
      skipped = List.copyOf(skipped);
    }
  }

  /**
   * Reads the configs.
   *
   * @param configs files, folders or {@code -}, as typed
   * @param design what is shown beside the settings
   * @param watcher hears how far it is
   */
  public static Answer run(
      List<String> configs,
      Optional<ReadDesign> design,
      InputStream standardInput,
      Watcher watcher) {
    List<Path> exclusions = design.map(ReadDesign::exclusions).orElse(List.of());
    Optional<Design> known = design.map(ReadDesign::design);
    List<Shown> switches = new ArrayList<>();
    List<String> unread = new ArrayList<>();
    List<String> skipped = new ArrayList<>(design.map(ReadDesign::skipped).orElse(List.of()));
    boolean bug = false;
    List<ConfigFile> files;
    try {
      files =
          ConfigReading.of(configs, exclusions, standardInput)
              .read(
                  settings -> switchOf(known, settings),
                  known.map(Design::harmless).orElse(List.of()),
                  watcher);
    } finally {
      watcher.end();
    }
    for (ConfigFile file : files) {
      if (file instanceof ConfigFile.Unread failed) {
        unread.add(failed.line());
        bug |= failed.bug();
      } else if (file instanceof ConfigFile.Skipped left) {
        skipped.add(left.line());
      } else if (file instanceof ConfigFile.Read read) {
        for (SwitchSettings settings : read.switches()) {
          if (InputCase.isConfig(settings)) {
            switches.add(view(known, settings));
          } else {
            unread.add(read.file() + ": is no config: it holds no statement about a switch");
          }
        }
      }
    }
    if (files.isEmpty()) {
      unread.add(String.join(" ", configs) + ": no file in it");
    }
    return new Answer(switches, unread, skipped, bug);
  }

  private static Optional<DesignSwitch> switchOf(Optional<Design> design, SwitchSettings settings) {
    return design.flatMap(known -> Scope.switchOf(known, settings));
  }

  private static Shown view(Optional<Design> design, SwitchSettings settings) {
    Optional<DesignSwitch> designed = switchOf(design, settings);
    return new Shown(
        designed.map(DesignSwitch::name).orElse(settings.name()),
        settings,
        designed
            .map(one -> design.get().ports().getOrDefault(one.name(), Map.of()))
            .orElse(Map.of()));
  }
}
