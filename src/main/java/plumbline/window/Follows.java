package plumbline.window;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.effective.PortSettings;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.result.Change.Kind;
import plumbline.setting.Bundle;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/**
 * Tells changes that rest on no line of their own from those that somebody made: a port carries
 * another VLAN because a list changed, and it is the list that was changed.
 */
final class Follows {
  /** What is computed from other settings and never typed. */
  private static final Set<String> COMPUTED =
      Set.of(
          Keys.CARRIED.name(),
          Keys.SUSPENDED.name(),
          Keys.ASKS_FOR_TRUNK.name(),
          Point.GATEWAY_WORKS);

  private final SwitchWindow window;
  private final List<Judged> all;
  private final IdentityHashMap<Judged, Set<String>> own = new IdentityHashMap<>();

  private Follows(SwitchWindow window, List<Judged> all) {
    this.window = window;
    this.all = all;
    all.forEach(one -> own.put(one, ownLines(one)));
  }

  /** The same changes, those that follow from others marked so. */
  static List<Judged> told(SwitchWindow window, List<Judged> changes) {
    Follows follows = new Follows(window, changes);
    return changes.stream().map(one -> follows.follows(one) ? one.as(Kind.FOLLOWS) : one).toList();
  }

  private boolean follows(Judged one) {
    boolean open =
        one.designed().isEmpty() && (one.kind() == Kind.BESIDE || one.kind() == Kind.UNPLANNED);
    if (isComputed(one)) {
      return (open || one.kind() == Kind.UNDECIDED)
          && all.stream().anyMatch(other -> !isComputed(other));
    }
    if (!open || isPresence(one)) {
      return false;
    }
    if (all.stream().anyMatch(other -> isPresence(other) && isSamePort(one, other))) {
      return true;
    }
    Set<String> causes = new HashSet<>();
    List<Judged> made = new ArrayList<>();
    for (Judged other : all) {
      if (other.designed().isPresent() && !other.point().before().equals(other.point().after())) {
        made.add(other);
        boolean reaches = isSamePort(one, other) || isMember(one, other);
        own.get(other).stream().filter(line -> reaches || !isInPort(line)).forEach(causes::add);
      }
    }
    return own.get(one).isEmpty() ? !made.isEmpty() : causes.containsAll(own.get(one));
  }

  private static boolean isComputed(Judged one) {
    return COMPUTED.contains(one.point().setting());
  }

  private static boolean isPresence(Judged one) {
    String setting = one.point().setting();
    return (setting.equals(Point.PORT) || setting.equals(Point.GATEWAY))
        && one.kind() != Kind.PLANNED_NOT_DONE;
  }

  private static boolean isSamePort(Judged one, Judged other) {
    return one.point().port().equals(other.point().port());
  }

  /** Whether the other change is one of the bundle that the port of this one is in. */
  private boolean isMember(Judged one, Judged other) {
    return one.point().port().isPresent()
        && other.point().port().filter(port -> bundles(one).contains(port)).isPresent();
  }

  private Set<PortName> bundles(Judged one) {
    PortName port = one.point().port().orElseThrow();
    Set<PortName> bundles = new HashSet<>();
    for (Side side : List.of(window.before(), window.after())) {
      Optional<Bundle> bundle = side.settings().port(port).flatMap(Follows::bundle);
      bundle.ifPresent(
          joined -> {
            bundles.add(PortName.of(PortKind.PORT_CHANNEL, joined.id()));
            bundles.add(PortName.of(PortKind.LAG, joined.id()));
          });
    }
    return bundles;
  }

  private static Optional<Bundle> bundle(PortSettings port) {
    Key<Bundle> key = Keys.BUNDLE;
    return port.get(key).value();
  }

  /** Lines behind a value that the other text does not have there, as {@code a12}, {@code b7}. */
  private Set<String> ownLines(Judged one) {
    Set<String> lines = new HashSet<>();
    lines("b", one.point().before(), window.before(), window.after()).forEach(lines::add);
    lines("a", one.point().after(), window.after(), window.before()).forEach(lines::add);
    return lines;
  }

  private static Stream<String> lines(String side, Setting<?> setting, Side here, Side there) {
    return Sameness.lines(setting).stream()
        .filter(line -> !there.lines().has(here.lines().portsOf(line), here.marks().of(line)))
        .map(line -> side + line);
  }

  private boolean isInPort(String line) {
    int number = Integer.parseInt(line.substring(1));
    Side side = line.startsWith("b") ? window.before() : window.after();
    return !side.lines().portsOf(number).isEmpty();
  }
}
