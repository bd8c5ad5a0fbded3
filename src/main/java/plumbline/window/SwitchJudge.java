package plumbline.window;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.port.PortName;
import plumbline.result.Change.Kind;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.vlan.VlanSet;

/**
 * Says of every point of a switch how it stands to the plan, which is where two designs differ, or
 * to the one design where no plan was given.
 */
final class SwitchJudge {
  private final SwitchWindow window;
  private final Sameness sameness;
  private final PortAims portAims;
  private final SwitchAims switchAims;
  private final Optional<PortAims> oldPortAims;
  private final Optional<SwitchAims> oldSwitchAims;
  private final Design design;
  private final List<Judged> judged = new ArrayList<>();
  private int leftOpen;

  private SwitchJudge(SwitchWindow window, Design design, Optional<Design> from) {
    this.window = window;
    this.design = design;
    this.sameness = new Sameness(window.before(), window.after());
    this.portAims = new PortAims(design, window);
    this.switchAims = new SwitchAims(design, window.name());
    this.oldPortAims = from.map(old -> new PortAims(old, window));
    this.oldSwitchAims = from.map(old -> new SwitchAims(old, window.name()));
  }

  /**
   * What changed on a switch, and what was to change and did not.
   *
   * @param judged the points
   * @param leftOpen how many points cannot be compared because a text is silent or breaks off
   */
  record Answer(List<Judged> judged, int leftOpen) {
    /** Copies the points. */
    Answer {
      judged = List.copyOf(judged);
    }
  }

  /**
   * Judges a switch.
   *
   * @param from the design before the change; where it is given the plan is where the two differ
   */
  static Answer of(SwitchWindow window, Design design, Optional<Design> from) {
    SwitchJudge judge = new SwitchJudge(window, design, from);
    judge.all();
    return new Answer(Follows.told(window, new ArrayList<>(judge.judged)), judge.leftOpen);
  }

  private void all() {
    Set<PortName> designed = new HashSet<>();
    VlanSet vlans = VlanSet.NONE;
    if (oldPortAims.isPresent()) {
      design.portsOf(window.name()).forEach(port -> designed.add(port.port()));
      vlans = switchAims.used();
    }
    Stream.concat(
            SwitchPoints.of(
                window.before().settings(), window.after().settings(), vlans, switchAims::isNamed)
                .stream(),
            PortPoints.of(window.before().settings(), window.after().settings(), designed).stream())
        .forEach(this::judge);
  }

  private void judge(Point point) {
    boolean changed = !sameness.isSame(point);
    if (!changed && oldPortAims.isEmpty()) {
      return;
    }
    if (point.key().filter(Keys.ALLOWED::equals).isPresent() && point.isDecided()) {
      judged.addAll(
          ListJudge.of(point, changed, portAims, oldPortAims, aim(point), isNewPlace(point)));
      return;
    }
    Optional<Kind> kind = kind(point, changed);
    boolean open =
        changed
            && (window.before().isLeftOpen(point.before())
                || window.after().isLeftOpen(point.after()));
    if (open && kind.filter(one -> one == Kind.UNDECIDED && !isPlanned(point)).isPresent()) {
      leftOpen++;
    } else {
      kind.ifPresent(one -> judged.add(Judged.of(point, one, aim(point))));
    }
  }

  private Optional<Kind> kind(Point point, boolean changed) {
    Optional<Aim> aim = aim(point);
    if (oldPortAims.isEmpty()) {
      return Optional.of(direction(point, aim));
    }
    if (!isPlanned(point)) {
      return changed
          ? Optional.of(point.isDecided() ? Kind.UNPLANNED : Kind.UNDECIDED)
          : Optional.empty();
    }
    Truth done = aim.map(Aim::after).orElse(Truth.YES);
    return switch (done) {
      case YES -> changed ? Optional.of(Kind.PLANNED_DONE) : Optional.empty();
      case NO -> Optional.of(Kind.PLANNED_NOT_DONE);
      case UNKNOWN -> Optional.of(Kind.UNDECIDED);
    };
  }

  private static Kind direction(Point point, Optional<Aim> aim) {
    if (!point.isDecided()
        || aim.filter(one -> one.before() == Truth.UNKNOWN || one.after() == Truth.UNKNOWN)
            .isPresent()) {
      return Kind.UNDECIDED;
    }
    if (aim.isEmpty() || aim.get().before() == aim.get().after()) {
      return Kind.BESIDE;
    }
    return aim.get().after() == Truth.YES ? Kind.TOWARDS : Kind.AWAY;
  }

  private Optional<Aim> aim(Point point) {
    return point.port().isPresent() && !isGateway(point)
        ? portAims.of(point)
        : switchAims.of(point);
  }

  private Optional<Aim> oldAim(Point point) {
    return point.port().isPresent() && !isGateway(point)
        ? oldPortAims.flatMap(aims -> aims.of(point))
        : oldSwitchAims.flatMap(aims -> aims.of(point));
  }

  private static boolean isGateway(Point point) {
    return point.setting().equals(Point.GATEWAY) || point.setting().equals(Point.ADDRESSES);
  }

  /** Whether the designs differ at a point, or give its port another place. */
  private boolean isPlanned(Point point) {
    return oldPortAims.isPresent()
        && (isNewPlace(point) || !aim(point).map(Aim::value).equals(oldAim(point).map(Aim::value)));
  }

  private boolean isNewPlace(Point point) {
    return point.port().isPresent()
        && oldPortAims.isPresent()
        && !place(portAims, point.port().get())
            .equals(place(oldPortAims.get(), point.port().get()));
  }

  private static Optional<String> place(PortAims aims, PortName port) {
    return aims.designed(port).map(DesignPort::subject);
  }
}
