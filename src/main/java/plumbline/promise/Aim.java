package plumbline.promise;

import java.util.Arrays;
import java.util.Optional;
import plumbline.fabric.Failure;
import plumbline.fabric.Middle;
import plumbline.fabric.VlanGraph.Point;
import plumbline.setting.Truth;

/** What a member of a VLAN needs to reach in it. */
sealed interface Aim {
  /** Nothing but the VLAN itself. */
  record Present() implements Aim {}

  /** A gateway that works. */
  record ToGateway() implements Aim {}

  /**
   * The rest of the VLAN's broadcast domain, for which one place stands.
   *
   * @param middle the place that most of the domain stays with, whatever else fails
   * @param next the one that does when the switch of that place fails; empty where nobody is left
   */
  record InDomain(Point middle, Optional<Point> next) implements Aim {
    /** The domain as a network stands; empty where nobody is in it. */
    static Optional<InDomain> of(VlanSide side) {
      return middle(side, VlanSide.NOTHING)
          .map(middle -> new InDomain(middle, middle(side, side.fabric().switchAt(middle))));
    }

    private static Optional<Point> middle(VlanSide side, Failure failure) {
      int[] sure = new int[side.fabric().boxes()];
      int[] open = new int[side.fabric().boxes()];
      for (Member member : side.members()) {
        for (Plug plug : member.plugs()) {
          Truth works = side.works(plug, failure);
          sure[side.fabric().box(plug.point())] += works == Truth.YES ? 1 : 0;
          open[side.fabric().box(plug.point())] += works == Truth.UNKNOWN ? 1 : 0;
        }
      }
      int[] weights = Arrays.stream(sure).anyMatch(weight -> weight > 0) ? sure : open;
      return Middle.of(side.fabric(), side.vlan(), side.carriage(), failure, weights);
    }

    /** The place that stands for the domain while something fails; empty where none does. */
    Optional<Point> at(VlanSide side, Failure failure) {
      return side.fabric().isDown(middle, failure) ? next : Optional.of(middle);
    }
  }
}
