package plumbline.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import plumbline.audit.AuditInput.AuditedConfig;
import plumbline.audit.AuditInput.MissingConfig;
import plumbline.audit.AuditInput.UnreadConfig;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.intake.Source;
import plumbline.rules.InputCase;
import plumbline.text.Wording;

/**
 * Which switches a run is about, and which config is whose. A config is of the switch whose
 * hostname it says, letter case aside where no switch fits exactly; without a hostname, of the
 * switch that the file is named after.
 */
final class Scope {
  private final Design design;
  private final Set<String> only;
  private final Function<SwitchSettings, Optional<DesignSwitch>> switchOf;
  private final List<ConfigFile.Unread> nobodys = new ArrayList<>();
  private int others;
  private final List<Entry> entries = new ArrayList<>();
  private final List<MissingConfig> missing = new ArrayList<>();
  private final List<UnreadConfig> unread = new ArrayList<>();
  private final List<String> notAudited = new ArrayList<>();
  private final List<String> notInScope = new ArrayList<>();
  private final Map<String, String> audited = new LinkedHashMap<>();

  private Scope(
      Design design, Set<String> only, Function<SwitchSettings, Optional<DesignSwitch>> switchOf) {
    this.design = design;
    this.only = only;
    this.switchOf = switchOf;
  }

  /**
   * A config that is audited.
   *
   * @param config settings and the switch that they are of
   * @param file the file that it was read from
   */
  record Entry(AuditedConfig config, ConfigFile.Read file) {
    /** Name of the switch in the design, or the config's where the design has none. */
    String name() {
      return config.designed().map(DesignSwitch::name).orElse(config.settings().name());
    }
  }

  /**
   * Matches configs with the switches of a design.
   *
   * @param whole whether every switch of the design must have a config
   * @param only names of the only switches that are wanted, which then must have one; may be empty
   * @param switchOf the switch of the design that settings are of
   */
  static Scope of(
      Design design,
      List<ConfigFile> files,
      boolean whole,
      Set<String> only,
      Function<SwitchSettings, Optional<DesignSwitch>> switchOf) {
    Scope scope = new Scope(design, only, switchOf);
    files.forEach(scope::take);
    scope.takeNobodys();
    for (DesignSwitch designed : design.switches().values()) {
      scope.missIfAbsent(designed, only.isEmpty() ? whole : scope.isWanted(Optional.of(designed)));
    }
    return scope;
  }

  private boolean isWanted(Optional<DesignSwitch> designed) {
    return only.isEmpty() || designed.filter(one -> only.contains(one.name())).isPresent();
  }

  private void take(ConfigFile file) {
    if (file instanceof ConfigFile.Unread failed) {
      Optional<DesignSwitch> designed = named(failed.stem());
      if (isWanted(designed)) {
        addUnread(failed, designed);
      } else if (designed.isPresent()) {
        others++;
      } else {
        nobodys.add(failed);
      }
    } else if (file instanceof ConfigFile.Read read) {
      read.switches().forEach(settings -> take(read, settings));
    }
  }

  private void addUnread(ConfigFile.Unread failed, Optional<DesignSwitch> designed) {
    unread.add(new UnreadConfig(failed.file(), designed, failed.reason()));
    notAudited.add(failed.line());
  }

  /** A file that cannot be read may be the one of a switch that is wanted and not found. */
  private void takeNobodys() {
    boolean all =
        design.switches().values().stream()
            .filter(one -> only.contains(one.name()))
            .allMatch(this::isGiven);
    for (ConfigFile.Unread failed : nobodys) {
      if (all && !failed.named()) {
        others++;
      } else {
        addUnread(failed, Optional.empty());
      }
    }
  }

  private void take(ConfigFile.Read file, SwitchSettings settings) {
    // A text that says nothing of a switch must not stand in for the one its file is named after.
    Optional<DesignSwitch> designed =
        switchOf.apply(settings).filter(any -> InputCase.isConfig(settings));
    if (!isWanted(designed) && !(designed.isEmpty() && file.named())) {
      others++;
      return;
    }
    if (designed.isEmpty()) {
      if (file.named()) {
        notAudited.add(file.file() + ": " + whyUnknown(file, settings));
      }
    } else if (audited.containsKey(designed.get().name())) {
      String name = designed.get().name();
      notAudited.add(
          file.file()
              + ": a second config of "
              + name
              + "; the one in "
              + audited.get(name)
              + " was audited, this one was not");
      return;
    } else {
      audited.put(designed.get().name(), file.file());
      settings
          .truncation()
          .ifPresent(
              cut ->
                  notAudited.add(
                      file.file()
                          + ":"
                          + cut.line()
                          + ": the text of "
                          + designed.get().name()
                          + " is cut short ("
                          + cut.why()
                          + "); what follows, and what is absent, is undecided"));
    }
    entries.add(new Entry(new AuditedConfig(designed, settings), file));
  }

  private static String whyUnknown(ConfigFile.Read file, SwitchSettings settings) {
    if (settings.hostname().value().isPresent()) {
      return "no switch of the design has the hostname " + Wording.quote(settings.name());
    }
    if (!InputCase.isConfig(settings)) {
      return "is no config: it holds no statement about a switch";
    }
    return file.file().equals(Source.STANDARD_INPUT)
        ? "the text on standard input has no hostname line, so its switch is not known; put the"
            + " line before it, give the text as a file named after its switch, or say --switch"
        : "the text has no hostname line, and no switch of the design is named like the file, "
            + Wording.quote(settings.name());
  }

  private boolean isGiven(DesignSwitch designed) {
    return audited.containsKey(designed.name())
        || unread.stream().anyMatch(failed -> failed.designed().equals(Optional.of(designed)));
  }

  private void missIfAbsent(DesignSwitch designed, boolean whole) {
    if (isGiven(designed)) {
      return;
    }
    if (whole) {
      missing.add(new MissingConfig(designed));
      notAudited.add(designed.name() + ": no config of this switch was given");
    } else {
      notInScope.add(designed.name());
    }
  }

  /** The switch of the design that the settings are of, if it has one. */
  static Optional<DesignSwitch> switchOf(Design design, SwitchSettings settings) {
    Optional<DesignSwitch> byHostname = find(design, settings.name(), DesignSwitch::hostname);
    boolean says = settings.hostname().value().isPresent();
    return says
        ? byHostname
        : byHostname.or(() -> find(design, settings.name(), DesignSwitch::name));
  }

  private Optional<DesignSwitch> named(String stem) {
    return find(design, stem, DesignSwitch::hostname)
        .or(() -> find(design, stem, DesignSwitch::name));
  }

  private static Optional<DesignSwitch> find(
      Design design, String word, Function<DesignSwitch, String> name) {
    Collection<DesignSwitch> switches = design.switches().values();
    return switches.stream()
        .filter(one -> name.apply(one).equals(word))
        .findFirst()
        .or(
            () ->
                switches.stream()
                    .filter(one -> name.apply(one).equalsIgnoreCase(word))
                    .findFirst());
  }

  /** The configs that are audited, in the order given. */
  List<Entry> entries() {
    return List.copyOf(entries);
  }

  /** Switches in scope without a config, in design order. */
  List<MissingConfig> missing() {
    return List.copyOf(missing);
  }

  /** Files that could not be read, in the order given. */
  List<UnreadConfig> unread() {
    return List.copyOf(unread);
  }

  /** One line for each thing that had to be audited and could not be. */
  List<String> notAudited() {
    return List.copyOf(notAudited);
  }

  /** One line for the configs that are left out because other switches are wanted. */
  List<String> leftOut() {
    return others == 0
        ? List.of()
        : List.of(
            others == 1
                ? "1 file is left out: it is of no switch that was asked for"
                : others + " files are left out: they are of no switch that was asked for");
  }

  /** Switches of the design that the run leaves out, sorted. */
  List<String> notInScope() {
    return notInScope.stream().sorted().toList();
  }
}
