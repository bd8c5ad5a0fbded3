package plumbline.window;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.result.Change.Kind;
import plumbline.vlan.VlanSet;

/**
 * Judges the allowed list of a trunk VLAN by VLAN, for a list may change in several ways at once.
 */
final class ListJudge {
  private final Point point;
  private final Optional<Aim> aim;
  private final VlanSet before;
  private final VlanSet after;
  private final Map<Kind, VlanSet> parts = new EnumMap<>(Kind.class);

  private ListJudge(Point point, Optional<Aim> aim) {
    this.point = point;
    this.aim = aim;
    this.before = list(point.before().value());
    this.after = list(point.after().value());
  }

  private static VlanSet list(Optional<?> value) {
    return value.map(VlanSet.class::cast).orElse(VlanSet.NONE);
  }

  /**
   * The parts of a list, each with its VLANs.
   *
   * @param changed whether the list is another
   * @param aims what the design says
   * @param old what the design before the change says, where there is one
   * @param aim what the design says of the whole list
   * @param newPlace whether the designs give the port places of their own
   */
  static List<Judged> of(
      Point point,
      boolean changed,
      PortAims aims,
      Optional<PortAims> old,
      Optional<Aim> aim,
      boolean newPlace) {
    ListJudge judge = new ListJudge(point, aim);
    PortName port = point.port().orElseThrow();
    Optional<VlanSet> wanted = aims.tagged(port);
    if (old.isEmpty()) {
      judge.direction(wanted, aims.aside(port));
    } else {
      judge.planned(wanted, old.get().tagged(port), aims.aside(port), newPlace);
    }
    return judge.parts(changed);
  }

  private VlanSet changed() {
    return before.minus(after).plus(after.minus(before));
  }

  private void direction(Optional<VlanSet> wanted, VlanSet aside) {
    if (wanted.isEmpty()) {
      put(Kind.BESIDE, changed());
      return;
    }
    VlanSet rest = changed().minus(aside);
    VlanSet right = after.and(wanted.get()).plus(after.plus(wanted.get()).complement());
    put(Kind.TOWARDS, rest.and(right));
    put(Kind.AWAY, rest.minus(right));
    // What the design does not mind goes with what it minds, if anything does.
    if (parts.isEmpty()) {
      put(Kind.BESIDE, changed());
    }
  }

  private void planned(
      Optional<VlanSet> wanted, Optional<VlanSet> old, VlanSet aside, boolean newPlace) {
    if (wanted.isEmpty()) {
      put(old.isPresent() || newPlace ? Kind.PLANNED_DONE : Kind.UNPLANNED, changed());
      return;
    }
    VlanSet plan =
        old.isEmpty() || newPlace
            ? wanted.get().plus(changed())
            : wanted.get().minus(old.get()).plus(old.get().minus(wanted.get()));
    VlanSet right = after.and(wanted.get()).plus(after.plus(wanted.get()).complement());
    VlanSet mind = plan.minus(aside.minus(wanted.get()));
    put(Kind.PLANNED_NOT_DONE, mind.minus(right));
    put(Kind.PLANNED_DONE, mind.and(right).and(changed()));
    put(Kind.UNPLANNED, changed().minus(plan).minus(aside));
    if (parts.isEmpty()) {
      put(Kind.UNPLANNED, changed());
    }
  }

  private void put(Kind kind, VlanSet vlans) {
    if (!vlans.isEmpty()) {
      parts.put(kind, vlans);
    }
  }

  private List<Judged> parts(boolean changed) {
    List<Judged> all = new ArrayList<>();
    parts.forEach((kind, vlans) -> all.add(new Judged(point, vlans, kind, aim)));
    if (all.isEmpty() && changed) {
      all.add(new Judged(point, VlanSet.NONE, Kind.BESIDE, aim));
    }
    return all;
  }
}
