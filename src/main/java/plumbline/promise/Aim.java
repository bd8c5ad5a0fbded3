package plumbline.promise;

import java.util.ArrayList;
import java.util.List;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;

/** What a member of a VLAN needs to reach in it. */
sealed interface Aim {
  /** Nothing but the VLAN itself. */
  record Present() implements Aim {}

  /** A gateway that works. */
  record ToGateway() implements Aim {}

  /**
   * The rest of the VLAN's broadcast domain, for which one place in it stands: a host forwards
   * nothing between its ports, so that it may be in two parts at once.
   *
   * @param anchors places in the largest part; the first that is there stands for it
   */
  record InDomain(List<Plug> anchors) implements Aim {
    /** Copies the list. */
    public InDomain {
      anchors = List.copyOf(anchors);
    }

    /** Picks the part with most places where somebody is plugged in, so that few are cut off. */
    static InDomain of(VlanSide side) {
      List<List<Plug>> groups = new ArrayList<>();
      for (Member member : side.members()) {
        for (Plug plug : member.plugs()) {
          if (side.works(plug, VlanSide.NOTHING) == Truth.YES) {
            groups.stream()
                .filter(group -> side.joins(group.get(0), plug, VlanSide.NOTHING) == Truth.YES)
                .findFirst()
                .orElseGet(
                    () -> {
                      groups.add(new ArrayList<>());
                      return groups.get(groups.size() - 1);
                    })
                .add(plug);
          }
        }
      }
      return new InDomain(
          groups.stream()
              .reduce((one, other) -> other.size() > one.size() ? other : one)
              .orElse(List.of()));
    }

    /** The place that stands for the domain while something fails; none where none is left. */
    List<Plug> anchor(VlanSide side, Failure failure) {
      for (Plug anchor : anchors) {
        if (side.works(anchor, failure) != Truth.NO) {
          return List.of(anchor);
        }
      }
      return List.of();
    }
  }
}
