package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.fabric.Connectivity;
import plumbline.fabric.Connectivity.Edge;

/** The parts of a VLAN and the faults that keep them apart, with a start and an end. */
final class FaultWalk {
  static final int START = -2;
  static final int END = -3;

  private final Missing gaps;
  private final List<Edge> edges = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();
  private final Set<Integer> start = new LinkedHashSet<>();
  private final Set<Integer> end = new LinkedHashSet<>();

  FaultWalk(Missing gaps) {
    this.gaps = gaps;
  }

  /** The part of a box is where the walk starts. */
  void joinStart(int box) {
    start.add(gaps.parts[box]);
  }

  /** The part of a box is where the walk ends. */
  void joinEnd(int box) {
    end.add(gaps.parts[box]);
  }

  /** A fault keeps the start or the end from the part of a box. */
  void add(int from, int box, Fault fault) {
    edges.add(new Edge(from, gaps.parts[box]));
    faults.add(fault);
  }

  /** The faults that were added, those of links left aside. */
  List<Fault> added() {
    return List.copyOf(faults);
  }

  /** The faults on some walk from start to end that meets no part twice. */
  Set<Fault> toBlame() {
    for (int at = 0; at < gaps.edges.size(); at++) {
      Edge edge = gaps.edges.get(at);
      edges.add(new Edge(gaps.parts[edge.one()], gaps.parts[edge.other()]));
      faults.add(gaps.faults.get(at));
    }
    Map<Integer, Integer> index = new HashMap<>();
    index.put(START, 0);
    index.put(END, 1);
    start.forEach(part -> index.put(part, 0));
    end.forEach(part -> index.put(part, 1));
    List<Edge> numbered = new ArrayList<>();
    for (Edge edge : edges) {
      numbered.add(new Edge(number(index, edge.one()), number(index, edge.other())));
    }
    numbered.add(new Edge(0, 1));
    int[] blocks = Connectivity.of(index.size() + 1, numbered).blocks();
    int wanted = blocks[numbered.size() - 1];
    Set<Fault> toBlame = new LinkedHashSet<>();
    for (int edge = 0; edge < faults.size(); edge++) {
      if (blocks[edge] == wanted) {
        toBlame.add(faults.get(edge));
      }
    }
    return toBlame;
  }

  private static int number(Map<Integer, Integer> index, int part) {
    return index.computeIfAbsent(part, any -> index.size());
  }

  /** What is missing of a VLAN while something fails. */
  static final class Missing {
    private final int[] parts;
    private final List<Edge> edges;
    private final List<Fault> faults;

    /**
     * What is missing.
     *
     * @param parts the part that each box is in
     * @param edges pairs of boxes that a faulty link would join
     * @param faults the fault of each edge
     */
    Missing(int[] parts, List<Edge> edges, List<Fault> faults) {
      this.parts = parts.clone();
      this.edges = List.copyOf(edges);
      this.faults = List.copyOf(faults);
    }
  }
}
