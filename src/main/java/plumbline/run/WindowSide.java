package plumbline.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.effective.SwitchSettings;
import plumbline.rules.InputCase;
import plumbline.window.OtherLines;
import plumbline.window.Side;

/** The configs of one side of a change window, by switch. */
final class WindowSide {
  private final Map<String, Scope.Entry> entries = new LinkedHashMap<>();
  private final Map<SwitchSettings, Side> sides =
      Collections.synchronizedMap(new IdentityHashMap<>());
  private final List<String> faults = new ArrayList<>();
  private final List<String> unread = new ArrayList<>();
  private final List<String> skipped = new ArrayList<>();
  private final List<String> bugs = new ArrayList<>();
  private final ConfigReading reading;

  private WindowSide(ConfigReading reading) {
    this.reading = reading;
  }

  /**
   * Reads a side.
   *
   * @param only the switch that a text without hostname is of, where it is the only one
   */
  static WindowSide read(
      List<String> arguments,
      Design design,
      List<Path> exclusions,
      Optional<DesignSwitch> only,
      InputStream standardInput,
      Watcher watcher) {
    WindowSide side = new WindowSide(ConfigReading.of(arguments, exclusions, standardInput));
    side.read(arguments, design, only, watcher);
    return side;
  }

  private void read(
      List<String> arguments, Design design, Optional<DesignSwitch> only, Watcher watcher) {
    boolean single = arguments.size() == 1 && !reading.hasFolder();
    Function<SwitchSettings, Optional<DesignSwitch>> switchOf =
        settings ->
            single && settings.hostname().value().isEmpty() && only.isPresent()
                ? only
                : Scope.switchOf(design, settings);
    List<ConfigFile> files =
        reading
            .handingOut(
                (settings, text) ->
                    sides.put(
                        settings,
                        new Side(
                            settings,
                            text.marks(),
                            OtherLines.of(text, settings, design.harmless()))))
            .read(switchOf, design.harmless(), watcher);
    Scope scope = Scope.of(design, files, false, Set.of(), switchOf);
    faults.addAll(scope.notAudited());
    scope.unread().forEach(file -> file.designed().ifPresent(one -> unread.add(one.name())));
    for (Scope.Entry entry : scope.entries()) {
      if (InputCase.isConfig(entry.config().settings())) {
        take(entry);
      }
    }
    for (ConfigFile file : files) {
      if (file instanceof ConfigFile.Skipped left) {
        skipped.add(left.line());
      } else if (file instanceof ConfigFile.Unread failed && failed.bug()) {
        bugs.add(failed.line());
      }
    }
    if (entries.isEmpty() && faults.isEmpty()) {
      faults.add(String.join(" ", arguments) + ": no config in it");
    }
  }

  /** Two texts of a switch that no design has cannot both stand for it. */
  private void take(Scope.Entry entry) {
    Scope.Entry first = entries.putIfAbsent(entry.name(), entry);
    if (first != null) {
      faults.add(
          entry.file().file()
              + ": a second config of "
              + entry.name()
              + "; the one in "
              + first.file().file()
              + " was taken, this one was not");
    }
  }

  /** Leaves out the switches that are not among the names; returns how many. */
  int keep(Set<String> names) {
    int all = entries.size();
    entries.keySet().retainAll(names);
    return all - entries.size();
  }

  /** Leaves out the switches of the names; returns those left out. */
  List<String> drop(Set<String> names) {
    List<String> dropped = entries.keySet().stream().filter(names::contains).sorted().toList();
    entries.keySet().removeAll(names);
    return dropped;
  }

  /** The switches by name, in the order given. */
  Map<String, Scope.Entry> entries() {
    return entries;
  }

  /** What a switch does, with what tells its lines apart. */
  Side side(String name) {
    SwitchSettings settings = entries.get(name).config().settings();
    Side side = sides.get(settings);
    if (side == null) {
      throw new IllegalStateException("no text was handed out for " + name);
    }
    return side;
  }

  /** The only switch of the design that the side is about, if there is just one. */
  Optional<DesignSwitch> only() {
    return entries.size() == 1
        ? entries.values().iterator().next().config().designed()
        : Optional.empty();
  }

  /** One line for each thing that had to be read and could not be. */
  List<String> faults() {
    return faults;
  }

  /** Names of switches whose file could not be read. */
  List<String> unread() {
    return unread;
  }

  /** One line for each file of a folder that is no config. */
  List<String> skipped() {
    return skipped;
  }

  /** One line for each file that this program fails to read. */
  List<String> bugs() {
    return bugs;
  }

  /** Whether a folder was given. */
  boolean hasFolder() {
    return reading.hasFolder();
  }

  /** The real places of the files, in the order given, by how they are named. */
  Map<Path, Path> realPaths() {
    Map<Path, Path> real = new LinkedHashMap<>();
    reading.paths().forEach(path -> real(path).ifPresent(place -> real.put(path, place)));
    return real;
  }

  /** Empty for a file that is not there, as reading it says. */
  private static Optional<Path> real(Path path) {
    try {
      return Optional.of(path.toRealPath());
    } catch (IOException gone) {
      return Optional.empty();
    }
  }
}
