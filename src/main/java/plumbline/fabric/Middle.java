package plumbline.fabric;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import plumbline.vlan.VlanId;

/**
 * The box in the middle of the heaviest part of a VLAN: no part that a single failure elsewhere
 * cuts off from it has more than half of the weight. In a tree each branch of the middle has at
 * most half, and any tree inside the graph serves.
 */
public final class Middle {
  private final List<List<Integer>> near = new ArrayList<>();
  private final long[] below;

  private Middle(int[] weights, List<Connectivity.Edge> edges) {
    this.below = Arrays.stream(weights).asLongStream().toArray();
    for (int box = 0; box < weights.length; box++) {
      near.add(new ArrayList<>());
    }
    for (Connectivity.Edge edge : edges) {
      near.get(edge.one()).add(edge.other());
      near.get(edge.other()).add(edge.one());
    }
  }

  /**
   * Some place on the box while something fails; empty where nothing weighs anything.
   *
   * @param weights what each box weighs, as {@link Fabric#box} counts them
   */
  public static Optional<VlanGraph.Point> of(
      Fabric fabric, VlanId vlan, Carriage carriage, Failure failure, int[] weights) {
    int box = new Middle(weights, fabric.joins(vlan, carriage, failure, true)).box();
    return box < 0 ? Optional.empty() : Optional.of(fabric.placeOn(box));
  }

  /** The box; -1 where nothing weighs anything. */
  private int box() {
    int[] above = new int[below.length];
    Arrays.fill(above, Integer.MIN_VALUE);
    List<Integer> heaviest = List.of();
    long most = 0;
    for (int box = 0; box < below.length; box++) {
      if (above[box] == Integer.MIN_VALUE) {
        List<Integer> part = walk(box, above);
        if (below[box] > most) {
          most = below[box];
          heaviest = part;
        }
      }
    }
    // the farthest box that has half of the weight behind it or on it
    for (int at = heaviest.size() - 1; at >= 0; at--) {
      if (2 * below[heaviest.get(at)] >= most) {
        return heaviest.get(at);
      }
    }
    return -1;
  }

  /** Walks a part, breadth first, and sums up for each box what lies behind it. */
  private List<Integer> walk(int start, int[] above) {
    List<Integer> order = new ArrayList<>();
    ArrayDeque<Integer> open = new ArrayDeque<>(List.of(start));
    above[start] = -1;
    while (!open.isEmpty()) {
      int from = open.remove();
      order.add(from);
      for (int to : near.get(from)) {
        if (above[to] == Integer.MIN_VALUE) {
          above[to] = from;
          open.add(to);
        }
      }
    }
    for (int at = order.size() - 1; at > 0; at--) {
      below[above[order.get(at)]] += below[order.get(at)];
    }
    return order;
  }
}
