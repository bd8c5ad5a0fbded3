package plumbline.fabric;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.setting.Carried;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * Where frames of one VLAN go where spanning tree does not go by what links carry: in multiple
 * spanning tree and in the modes with one tree, a link that lacks the VLAN cuts it while the tree
 * forwards there, though a blocked link carries it (IEEE 802.1Q, multiple spanning tree).
 */
final class TreeGraph implements Carriage {
  private static final int NONE = -1;

  private final Fabric fabric;
  private final Chassis chassis;
  private final Forwarding forwarding;
  private final BitSet certain = new BitSet();
  private final BitSet possible = new BitSet();
  private final Map<Failure, List<int[]>> parts = new HashMap<>();
  private int[] wayLink;
  private int[] wayBox;

  TreeGraph(Fabric fabric, Chassis chassis, VlanId vlan, Forwarding forwarding) {
    this.fabric = fabric;
    this.chassis = chassis;
    this.forwarding = forwarding;
    for (int link = 0; link < fabric.links().size(); link++) {
      Carried crossing = fabric.facts(link).crosses();
      certain.set(link, crossing.certain().contains(vlan));
      possible.set(link, crossing.possible().contains(vlan));
    }
  }

  @Override
  public Truth joins(VlanGraph.Point one, VlanGraph.Point other, Failure failure) {
    int from = chassis.indexOf(one.switchName(), one.port());
    int to = chassis.indexOf(other.switchName(), other.port());
    List<int[]> both = parts(failure);
    if (isJoined(both.get(0), from, to)) {
      return Truth.YES;
    }
    return isJoined(both.get(1), from, to) ? Truth.UNKNOWN : Truth.NO;
  }

  private static boolean isJoined(int[] part, int from, int to) {
    return part[from] != NONE && part[from] == part[to];
  }

  @Override
  public Truth forwards(int link, Failure failure) {
    Forwarding.Passing passing = forwarding.during(shaping(failure));
    if (passing.certain().get(link)) {
      return Truth.YES;
    }
    return passing.possible().get(link) ? Truth.UNKNOWN : Truth.NO;
  }

  /** What fails outside the switches shapes no tree. */
  private static Failure shaping(Failure failure) {
    boolean shapes =
        failure instanceof Failure.OfSwitch
            || failure instanceof Failure.OfLink
            || failure instanceof Failure.OfCable;
    return shapes ? failure : new Failure.None();
  }

  /** For each box the part that it is in, by certain links and by possible ones. */
  private List<int[]> parts(Failure failure) {
    return parts.computeIfAbsent(
        shaping(failure),
        shape -> {
          Forwarding.Passing passing = forwarding.during(shape);
          return List.of(
              parts(shape, both(certain, passing.certain()), true),
              parts(shape, both(possible, passing.possible()), false));
        });
  }

  private static BitSet both(BitSet carrying, BitSet passing) {
    BitSet both = (BitSet) carrying.clone();
    both.and(passing);
    return both;
  }

  private int[] parts(Failure failure, BitSet links, boolean surely) {
    Parts parts = new Parts(chassis.count(), box -> fabric.isDown(box, failure));
    chassis.rings().forEach(parts::join);
    links.stream().forEach(link -> fabric.edges(link, failure, surely).forEach(parts::join));
    return parts.all();
  }

  /**
   * What is on the ways of both places to the root: when anything else fails, the trees of both
   * stay as they are.
   */
  @Override
  public Set<Failure> suspects(VlanGraph.Point one, VlanGraph.Point other) {
    findWays();
    Set<Failure> found = new LinkedHashSet<>();
    for (VlanGraph.Point point : List.of(one, other)) {
      int at = chassis.indexOf(point.switchName(), point.port());
      found.add(box(at));
      while (wayBox[at] != NONE) {
        if (wayLink[at] != NONE) {
          found.addAll(suspects(wayLink[at]));
        }
        at = wayBox[at];
        found.add(box(at));
      }
    }
    return found;
  }

  private List<Failure> suspects(int link) {
    List<Failure> found = new ArrayList<>(List.of(new Failure.OfLink(link)));
    FabricLink of = fabric.links().get(link);
    for (int cable = 0; cable < of.cables().size() && of.cables().size() > 1; cable++) {
      found.add(new Failure.OfCable(link, cable));
    }
    for (Connectivity.Edge edge : fabric.edges(link, new Failure.None(), false)) {
      found.add(box(edge.one()));
      found.add(box(edge.other()));
    }
    return found;
  }

  private Failure box(int at) {
    return new Failure.OfSwitch(chassis.box(at).name(), chassis.box(at).member());
  }

  /** The ways of all boxes to the roots, over every link that may forward, whatever it carries. */
  private void findWays() {
    if (wayBox != null) {
      return;
    }
    Forwarding.Passing passing = forwarding.during(new Failure.None());
    List<List<int[]>> near = new ArrayList<>();
    for (int box = 0; box < chassis.count(); box++) {
      near.add(new ArrayList<>());
    }
    chassis.rings().forEach(ring -> beside(near, ring, NONE));
    passing.possible().stream()
        .forEach(
            link ->
                fabric
                    .edges(link, new Failure.None(), false)
                    .forEach(edge -> beside(near, edge, link)));
    wayLink = new int[chassis.count()];
    wayBox = new int[chassis.count()];
    Arrays.fill(wayLink, NONE);
    Arrays.fill(wayBox, NONE);
    boolean[] seen = new boolean[chassis.count()];
    passing.roots().stream().map(chassis::firstOf).sorted().forEach(root -> walk(root, near, seen));
    for (int box = 0; box < seen.length; box++) {
      walk(box, near, seen);
    }
  }

  private static void beside(List<List<int[]>> near, Connectivity.Edge edge, int link) {
    near.get(edge.one()).add(new int[] {edge.other(), link});
    near.get(edge.other()).add(new int[] {edge.one(), link});
  }

  private void walk(int start, List<List<int[]>> near, boolean[] seen) {
    if (seen[start]) {
      return;
    }
    ArrayDeque<Integer> open = new ArrayDeque<>(List.of(start));
    seen[start] = true;
    while (!open.isEmpty()) {
      int from = open.remove();
      for (int[] step : near.get(from)) {
        if (!seen[step[0]]) {
          seen[step[0]] = true;
          wayBox[step[0]] = from;
          wayLink[step[0]] = step[1];
          open.add(step[0]);
        }
      }
    }
  }
}
