package plumbline.fabric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What stays connected in an undirected graph when one vertex or one edge fails: one depth-first
 * walk answers every failure, by the order in which it enters vertices and the lowest vertex that a
 * subtree still reaches (textbook algorithm for cut vertices and bridges).
 *
 * <p>Parallel edges are edges of their own; an edge from a vertex to itself joins nothing.
 */
public final class Connectivity {
  private static final int NONE = -1;

  private final List<Edge> edges;
  private final int[][] incident;
  private final int[] entered;
  private final int[] left;
  private final int[] lowest;
  private final int[] above;
  private final int[] part;
  private final int[][] below;
  private final int[] toLowest;

  /**
   * An edge.
   *
   * @param one index of a vertex
   * @param other index of a vertex
   */
  public record Edge(int one, int other) {
    /** The end that is not this one. */
    int across(int vertex) {
      return vertex == one ? other : one;
    }
  }

  private Connectivity(int vertices, List<Edge> edges) {
    this.edges = List.copyOf(edges);
    this.incident = incident(vertices, edges);
    this.entered = filled(vertices);
    this.left = filled(vertices);
    this.lowest = filled(vertices);
    this.above = filled(vertices);
    this.part = filled(vertices);
    List<List<Integer>> children = new ArrayList<>();
    for (int vertex = 0; vertex < vertices; vertex++) {
      children.add(new ArrayList<>());
    }
    int[] next = new int[vertices];
    int clock = 0;
    for (int vertex = 0; vertex < vertices; vertex++) {
      if (part[vertex] == NONE) {
        clock = walk(vertex, clock, next, children);
      }
    }
    this.below =
        children.stream()
            .map(of -> of.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new);
    this.toLowest = filled(vertices);
    findWays();
  }

  /**
   * Walks a graph.
   *
   * @param vertices their number; they are called 0, 1, ...
   * @param edges its edges
   */
  public static Connectivity of(int vertices, List<Edge> edges) {
    return new Connectivity(vertices, edges);
  }

  /** Whether a path joins two vertices. */
  public boolean joins(int one, int other) {
    return part[one] == part[other];
  }

  /** Whether a path joins two vertices when a vertex fails; nothing is joined with that one. */
  public boolean joinsWithoutVertex(int one, int other, int failed) {
    return one != failed
        && other != failed
        && joins(one, other)
        && (part[one] != part[failed] || branch(one, failed) == branch(other, failed));
  }

  /** Whether a path joins two vertices when an edge fails. */
  public boolean joinsWithoutEdge(int one, int other, int failed) {
    if (!joins(one, other)) {
      return false;
    }
    int lower = lowerEnd(failed);
    return lower == NONE || isBelow(one, lower) == isBelow(other, lower);
  }

  /** The vertices whose failure cuts others off from each other, ascending. */
  public List<Integer> cutVertices() {
    List<Integer> found = new ArrayList<>();
    for (int vertex = 0; vertex < below.length; vertex++) {
      int held = 0;
      for (int child : below[vertex]) {
        held += lowest[child] >= entered[vertex] ? 1 : 0;
      }
      boolean isFirst = above[vertex] == NONE;
      if (held > (isFirst ? 1 : 0)) {
        found.add(vertex);
      }
    }
    return found;
  }

  /** The edges whose failure cuts vertices off from each other, ascending. */
  public List<Integer> bridges() {
    List<Integer> found = new ArrayList<>();
    for (int edge = 0; edge < edges.size(); edge++) {
      if (lowerEnd(edge) != NONE) {
        found.add(edge);
      }
    }
    return found;
  }

  /**
   * The block of each edge: two edges are in one block when they lie on a common cycle, or are the
   * same edge. The edges that are on some walk between two vertices which meets no vertex twice are
   * those of the block that an edge between the two would be in. Edges that join nothing have -1.
   */
  public int[] blocks() {
    Integer[] order = new Integer[below.length];
    Arrays.setAll(order, vertex -> vertex);
    Arrays.sort(order, Comparator.comparingInt(vertex -> entered[vertex]));
    int[] ofVertex = filled(below.length);
    int count = 0;
    for (int vertex : order) {
      if (above[vertex] != NONE) {
        int parent = edges.get(above[vertex]).across(vertex);
        ofVertex[vertex] = lowest[vertex] >= entered[parent] ? count++ : ofVertex[parent];
      }
    }
    int[] blocks = filled(edges.size());
    for (int edge = 0; edge < blocks.length; edge++) {
      Edge ends = edges.get(edge);
      if (ends.one() != ends.other()) {
        boolean first = entered[ends.one()] > entered[ends.other()];
        blocks[edge] = ofVertex[first ? ends.one() : ends.other()];
      }
    }
    return blocks;
  }

  /** The part that a vertex is in: the lowest vertex of it. */
  public int partOf(int vertex) {
    return part[vertex];
  }

  /** The end of an edge that is not this one. */
  public int across(int edge, int vertex) {
    return edges.get(edge).across(vertex);
  }

  /**
   * The edges of a short way from a vertex to the lowest vertex of its part, in order. Two such
   * ways are a walk between their beginnings, so whatever cuts these off from each other is on it.
   */
  public List<Integer> wayDown(int vertex) {
    List<Integer> way = new ArrayList<>();
    int at = vertex;
    while (toLowest[at] != NONE) {
      way.add(toLowest[at]);
      at = edges.get(toLowest[at]).across(at);
    }
    return way;
  }

  /** Breadth first, so that the ways are short. */
  private void findWays() {
    boolean[] seen = new boolean[part.length];
    List<Integer> open = new ArrayList<>();
    for (int vertex = 0; vertex < part.length; vertex++) {
      if (part[vertex] == vertex) {
        seen[vertex] = true;
        open.add(vertex);
      }
    }
    for (int next = 0; next < open.size(); next++) {
      int from = open.get(next);
      for (int edge : incident[from]) {
        int to = edges.get(edge).across(from);
        if (!seen[to]) {
          seen[to] = true;
          toLowest[to] = edge;
          open.add(to);
        }
      }
    }
  }

  /** The lower end of an edge that is a bridge. */
  private int lowerEnd(int edge) {
    Edge ends = edges.get(edge);
    int lower = entered[ends.one()] > entered[ends.other()] ? ends.one() : ends.other();
    return above[lower] == edge && lowest[lower] == entered[lower] ? lower : NONE;
  }

  private boolean isBelow(int vertex, int top) {
    return entered[vertex] >= entered[top] && left[vertex] <= left[top];
  }

  /** What is left of the part around a failed vertex: a branch below it, or all the rest. */
  private int branch(int vertex, int failed) {
    if (!isBelow(vertex, failed)) {
      return NONE;
    }
    int[] children = below[failed];
    int low = 0;
    int high = children.length - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (entered[children[middle]] <= entered[vertex]) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    int child = children[low];
    return lowest[child] < entered[failed] ? NONE : child;
  }

  /** Walks one part without recursion: a chain may be as long as a design. */
  private int walk(int first, int start, int[] next, List<List<Integer>> children) {
    int clock = start;
    List<Integer> path = new ArrayList<>(List.of(first));
    enter(first, first, clock++);
    while (!path.isEmpty()) {
      int vertex = path.get(path.size() - 1);
      if (next[vertex] == incident[vertex].length) {
        path.remove(path.size() - 1);
        left[vertex] = clock - 1;
        if (!path.isEmpty()) {
          int parent = path.get(path.size() - 1);
          lowest[parent] = Math.min(lowest[parent], lowest[vertex]);
        }
        continue;
      }
      int edge = incident[vertex][next[vertex]++];
      int across = edges.get(edge).across(vertex);
      if (part[across] == NONE) {
        enter(across, first, clock++);
        above[across] = edge;
        children.get(vertex).add(across);
        path.add(across);
      } else if (edge != above[vertex]) {
        lowest[vertex] = Math.min(lowest[vertex], entered[across]);
      }
    }
    return clock;
  }

  private void enter(int vertex, int first, int clock) {
    part[vertex] = first;
    entered[vertex] = clock;
    lowest[vertex] = clock;
  }

  private static int[][] incident(int vertices, List<Edge> edges) {
    List<List<Integer>> of = new ArrayList<>();
    for (int vertex = 0; vertex < vertices; vertex++) {
      of.add(new ArrayList<>());
    }
    for (int edge = 0; edge < edges.size(); edge++) {
      Edge ends = edges.get(edge);
      if (ends.one() != ends.other()) {
        of.get(ends.one()).add(edge);
        of.get(ends.other()).add(edge);
      }
    }
    return of.stream()
        .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
        .toArray(int[][]::new);
  }

  private static int[] filled(int length) {
    int[] values = new int[length];
    Arrays.fill(values, NONE);
    return values;
  }
}
