package plumbline.promise;

import java.util.ArrayList;
import java.util.Comparator;
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
   * The rest of the VLAN's broadcast domain, for which one member stands.
   *
   * @param anchors members that stand for it, by index, the first that is there does
   */
  record InDomain(List<Integer> anchors) implements Aim {
    /** Copies the list. */
    public InDomain {
      anchors = List.copyOf(anchors);
    }

    /** Picks the largest group of members that reach each other, so that few are cut off. */
    static InDomain of(VlanSide side) {
      List<List<Integer>> groups = new ArrayList<>();
      for (int index = 0; index < side.members().size(); index++) {
        int member = index;
        if (side.isThere(side.members().get(index), VlanSide.NOTHING)) {
          groups.stream()
              .filter(group -> reach(side, group.get(0), member))
              .findFirst()
              .orElseGet(
                  () -> {
                    groups.add(new ArrayList<>());
                    return groups.get(groups.size() - 1);
                  })
              .add(member);
        }
      }
      List<Integer> largest =
          groups.stream()
              .reduce((one, other) -> other.size() > one.size() ? other : one)
              .orElse(List.of());
      // who is plugged in twice is cut off itself last
      return new InDomain(
          largest.stream()
              .sorted(Comparator.comparingInt(member -> -side.members().get(member).plugs().size()))
              .toList());
    }

    private static boolean reach(VlanSide side, int one, int other) {
      return side.holds(side.members().get(other), new InDomain(List.of(one)), VlanSide.NOTHING)
          == Truth.YES;
    }

    /** The member that stands for the domain while something fails; -1 where none is left. */
    int anchor(VlanSide side, Failure failure) {
      for (int anchor : anchors) {
        if (side.isThere(side.members().get(anchor), failure)) {
          return anchor;
        }
      }
      return -1;
    }
  }
}
