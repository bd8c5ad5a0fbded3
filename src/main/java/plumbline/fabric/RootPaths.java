package plumbline.fabric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** How far each bridge is from the root of its part of the network. */
final class RootPaths {
  private static final long FAR = Long.MAX_VALUE;

  private final List<Segment> segments;
  private final List<List<Integer>> segmentsOf;
  private final long[] bridges;
  private final long[] lans;

  private RootPaths(int bridgeCount, List<Segment> segments) {
    this.segments = segments;
    this.segmentsOf = segmentsOf(bridgeCount, segments);
    this.bridges = filled(bridgeCount);
    this.lans = filled(segments.size());
  }

  /** The path costs from these roots, one in each part of the network that has one. */
  static RootPaths from(List<Integer> roots, int bridgeCount, List<Segment> segments) {
    RootPaths paths = new RootPaths(bridgeCount, segments);
    paths.spread(roots);
    return paths;
  }

  /** The parts of the network: for each bridge the lowest index of a bridge in its part. */
  static int[] parts(int bridgeCount, List<Segment> segments) {
    List<List<Integer>> segmentsOf = segmentsOf(bridgeCount, segments);
    int[] part = new int[bridgeCount];
    Arrays.fill(part, -1);
    for (int first = 0; first < bridgeCount; first++) {
      if (part[first] >= 0) {
        continue;
      }
      List<Integer> open = new ArrayList<>(List.of(first));
      part[first] = first;
      for (int next = 0; next < open.size(); next++) {
        for (int segment : segmentsOf.get(open.get(next))) {
          for (Segment.End end : segments.get(segment).ports()) {
            if (part[end.bridge()] < 0) {
              part[end.bridge()] = first;
              open.add(end.bridge());
            }
          }
        }
      }
    }
    return part;
  }

  /** The root path cost of a bridge; the highest number where no root is reached. */
  long ofBridge(int bridge) {
    return bridges[bridge];
  }

  /** The lowest root path cost that is sent on a segment. */
  long ofSegment(int segment) {
    return lans[segment];
  }

  private void spread(List<Integer> roots) {
    record Reached(int bridge, long cost) {}
    PriorityQueue<Reached> open = new PriorityQueue<>(Comparator.comparingLong(Reached::cost));
    for (int root : roots) {
      bridges[root] = 0;
      open.add(new Reached(root, 0));
    }
    while (!open.isEmpty()) {
      Reached next = open.remove();
      if (next.cost() > bridges[next.bridge()]) {
        continue;
      }
      for (int segment : segmentsOf.get(next.bridge())) {
        if (next.cost() >= lans[segment]) {
          continue;
        }
        lans[segment] = next.cost();
        for (Segment.End end : segments.get(segment).ports()) {
          // the receiving port adds its cost, not the sending one
          long cost = next.cost() + end.cost();
          if (cost < bridges[end.bridge()]) {
            bridges[end.bridge()] = cost;
            open.add(new Reached(end.bridge(), cost));
          }
        }
      }
    }
  }

  private static List<List<Integer>> segmentsOf(int bridgeCount, List<Segment> segments) {
    List<List<Integer>> of = new ArrayList<>();
    for (int bridge = 0; bridge < bridgeCount; bridge++) {
      of.add(new ArrayList<>());
    }
    for (int segment = 0; segment < segments.size(); segment++) {
      for (Segment.End end : segments.get(segment).ports()) {
        of.get(end.bridge()).add(segment);
      }
    }
    return of;
  }

  private static long[] filled(int length) {
    long[] costs = new long[length];
    Arrays.fill(costs, FAR);
    return costs;
  }
}
