package plumbline.promise;

import java.util.ArrayList;
import java.util.List;
import plumbline.fabric.VlanGraph.Point;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * Whether everybody in a VLAN reaches what they are promised, as a network stands.
 *
 * @param vlan the VLAN
 * @param without who does not
 * @param open of whom that cannot be told
 * @param around whether for somebody it hangs on what is outside the design
 * @param asked how many were asked
 */
public record Reaching(VlanId vlan, List<Cut> without, List<Cut> open, boolean around, int asked) {
  /** Copies the lists. */
  public Reaching {
    without = List.copyOf(without);
    open = List.copyOf(open);
  }

  /**
   * Somebody, or one port of a host that others of its ports do not help.
   *
   * @param who the name, with the port where it is about one
   * @param points the places where the VLAN passes and leads nowhere
   */
  public record Cut(String who, List<Point> points) {
    /** Copies the list. */
    public Cut {
      points = List.copyOf(points);
    }
  }

  /** Asks all members of a VLAN for one aim. */
  static Reaching of(VlanSide side, Aim aim) {
    List<Cut> without = new ArrayList<>();
    List<Cut> open = new ArrayList<>();
    boolean around = false;
    int asked = 0;
    for (Member member : side.members()) {
      if (member.kind() == Member.Kind.OUTSIDE) {
        continue;
      }
      asked++;
      Truth holds = side.holds(member, aim, VlanSide.NOTHING);
      List<Plug> stranded = stranded(side, member, aim, Truth.NO);
      List<Plug> unclear = stranded(side, member, aim, Truth.UNKNOWN);
      around |= unclear.stream().anyMatch(plug -> side.leaves(plug, VlanSide.NOTHING));
      unclear = unclear.stream().filter(plug -> !side.leaves(plug, VlanSide.NOTHING)).toList();
      if (holds == Truth.NO && side.isThere(member, VlanSide.NOTHING)) {
        without.add(new Cut(member.name(), points(stranded)));
      } else if (holds == Truth.YES) {
        stranded.forEach(plug -> without.add(port(member, plug)));
        unclear.forEach(plug -> open.add(port(member, plug)));
      } else if (!unclear.isEmpty()) {
        open.add(new Cut(member.name(), points(unclear)));
      } else if (holds == Truth.UNKNOWN && !around) {
        open.add(new Cut(member.name(), points(member.plugs())));
      }
    }
    return new Reaching(side.vlan(), without, open, around, asked);
  }

  private static List<Plug> stranded(VlanSide side, Member member, Aim aim, Truth truth) {
    return member.plugs().stream()
        .filter(plug -> side.works(plug, VlanSide.NOTHING) == Truth.YES)
        .filter(plug -> side.holds(plug, aim, VlanSide.NOTHING) == truth)
        .toList();
  }

  private static Cut port(Member member, Plug plug) {
    return new Cut(
        member.name() + plug.name().map(name -> " " + name).orElse(""), points(List.of(plug)));
  }

  private static List<Point> points(List<Plug> plugs) {
    return plugs.stream().map(Plug::point).toList();
  }
}
