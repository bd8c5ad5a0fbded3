package plumbline.fabric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import plumbline.fabric.Segment.End;

/**
 * What one spanning tree settles on: root, root path costs and port roles, computed from the
 * published order of comparison: root, path cost, sending bridge, sending port, own port (IEEE
 * 802.1Q, priority vectors). Where bridge addresses that are not known would decide, it says so and
 * never guesses.
 */
public final class ActiveTopology {
  private static final int OPEN = -1;

  private final List<BridgeId> bridges;
  private final List<Segment> segments;
  private final int[] parts;
  private final List<List<Integer>> candidates;
  private final int[] roots;
  private final RootPaths paths;
  private final List<List<End>> servers = new ArrayList<>();
  private final List<List<Way>> ways = new ArrayList<>();

  /** An end of a segment. */
  private record Way(int segment, End end) {}

  private ActiveTopology(List<BridgeId> bridges, List<Segment> segments) {
    this.bridges = List.copyOf(bridges);
    this.segments = List.copyOf(segments);
    this.parts = RootPaths.parts(bridges.size(), segments);
    this.candidates = candidates();
    this.roots = candidates.stream().mapToInt(of -> of.size() == 1 ? of.get(0) : OPEN).toArray();
    this.paths =
        RootPaths.from(
            Arrays.stream(roots).filter(root -> root != OPEN).distinct().boxed().toList(),
            bridges.size(),
            segments);
    this.segments.forEach(segment -> servers.add(serversOf(segment)));
    rootWays();
  }

  /**
   * Settles a network.
   *
   * @param bridges identifiers of the bridges, by index
   * @param segments what joins them; a segment with one end leads to no bridge
   */
  public static ActiveTopology of(List<BridgeId> bridges, List<Segment> segments) {
    return new ActiveTopology(bridges, segments);
  }

  /** The root of the part of the network that a bridge is in; empty where it is not decided. */
  public OptionalInt rootOf(int bridge) {
    int root = roots[bridge];
    return root == OPEN ? OptionalInt.empty() : OptionalInt.of(root);
  }

  /** The bridges of its part that no other beats for certain: one, where the root is decided. */
  public List<Integer> rootCandidates(int bridge) {
    return List.copyOf(candidates.get(bridge));
  }

  /** The root path cost of a bridge; empty where its root is not decided. */
  public OptionalLong costOf(int bridge) {
    return roots[bridge] == OPEN ? OptionalLong.empty() : OptionalLong.of(paths.ofBridge(bridge));
  }

  /** The role of an end of a segment, both by index. */
  public PortRole role(int segment, int end) {
    End port = segments.get(segment).ports().get(end);
    List<End> serving = servers.get(segment);
    if (serving.size() == 1 && serving.contains(port)) {
      return PortRole.DESIGNATED;
    }
    if (roots[port.bridge()] == OPEN || serving.contains(port)) {
      return PortRole.UNDECIDED;
    }
    List<Way> toRoot = ways.get(port.bridge());
    if (toRoot.contains(new Way(segment, port))) {
      return toRoot.size() == 1 ? PortRole.ROOT : PortRole.UNDECIDED;
    }
    long own = serving.stream().filter(other -> other.bridge() == port.bridge()).count();
    if (own > 0 && own < serving.size()) {
      return PortRole.UNDECIDED;
    }
    return own == 0 ? PortRole.ALTERNATE : PortRole.BACKUP;
  }

  /** For each bridge the bridges of its part that no other beats for certain. */
  private List<List<Integer>> candidates() {
    List<List<Integer>> ofPart = new ArrayList<>();
    for (int bridge = 0; bridge < parts.length; bridge++) {
      // a part is called by its lowest bridge, so its list is there when the others come
      ofPart.add(parts[bridge] == bridge ? new ArrayList<>() : ofPart.get(parts[bridge]));
      List<Integer> lowest = ofPart.get(bridge);
      BridgeId id = bridges.get(bridge);
      if (lowest.stream().noneMatch(other -> bridges.get(other).beats(id))) {
        lowest.removeIf(other -> id.beats(bridges.get(other)));
        lowest.add(bridge);
      }
    }
    return ofPart;
  }

  /** The ends that may serve a segment: no other end beats them for certain. */
  private List<End> serversOf(Segment segment) {
    return segment.ports().stream()
        .filter(end -> segment.ports().stream().noneMatch(other -> serves(other, end)))
        .toList();
  }

  private boolean serves(End one, End than) {
    if (roots[one.bridge()] == OPEN && one.bridge() != than.bridge()) {
      return false;
    }
    long cost = paths.ofBridge(one.bridge());
    long otherCost = paths.ofBridge(than.bridge());
    return cost == otherCost ? sendsBetter(one, than) : cost < otherCost;
  }

  /** Whether one sender beats another for certain, at equal path costs. */
  private boolean sendsBetter(End one, End than) {
    return one.bridge() == than.bridge()
        ? one.id().compareTo(than.id()) < 0
        : bridges.get(one.bridge()).beats(bridges.get(than.bridge()));
  }

  /** For each bridge the ends that may be its root port. */
  private void rootWays() {
    List<List<Way>> nearest = new ArrayList<>();
    bridges.forEach(any -> nearest.add(new ArrayList<>()));
    for (int segment = 0; segment < segments.size(); segment++) {
      for (End end : segments.get(segment).ports()) {
        int bridge = end.bridge();
        if (roots[bridge] != OPEN
            && roots[bridge] != bridge
            && paths.ofSegment(segment) + end.cost() == paths.ofBridge(bridge)) {
          nearest.get(bridge).add(new Way(segment, end));
        }
      }
    }
    for (List<Way> of : nearest) {
      ways.add(
          of.stream().filter(way -> of.stream().noneMatch(other -> hears(other, way))).toList());
    }
  }

  /** Whether a bridge hears better things on one of its ends than on another for certain. */
  private boolean hears(Way one, Way other) {
    if (one.segment() == other.segment()) {
      return one.end().id().compareTo(other.end().id()) < 0;
    }
    return servers.get(one.segment()).stream()
        .allMatch(
            sender ->
                servers.get(other.segment()).stream().allMatch(than -> sendsBetter(sender, than)));
  }
}
