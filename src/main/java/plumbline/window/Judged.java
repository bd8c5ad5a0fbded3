package plumbline.window;

import java.util.List;
import java.util.Optional;
import plumbline.result.Change.Kind;
import plumbline.setting.Evidence;
import plumbline.vlan.VlanSet;
import plumbline.yaml.Position;

/**
 * A point, or some VLANs of it, and how it stands to the plan or to the design.
 *
 * @param point the point
 * @param vlans the VLANs; none where it is about none
 * @param kind how it stands
 * @param designed what the design says, if it says something
 */
record Judged(Point point, VlanSet vlans, Kind kind, Optional<Aim> designed) {
  /** A point as a whole. */
  static Judged of(Point point, Kind kind, Optional<Aim> designed) {
    return new Judged(point, point.vlans(), kind, designed);
  }

  /** Where the design says so. */
  Optional<Position> at() {
    return designed.flatMap(Aim::at);
  }

  /** What the value before rests on. */
  List<Evidence> evidenceBefore() {
    return point.before().evidence();
  }

  /** What the value after rests on. */
  List<Evidence> evidenceAfter() {
    return point.after().evidence();
  }

  /** The same, of another kind. */
  Judged as(Kind other) {
    return new Judged(point, vlans, other, designed);
  }
}
