package plumbline.fabric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.fabric.Segment.End;
import plumbline.fabric.TreeLink.TreeEnd;

/**
 * One connected part of a spanning tree: who may be its root, and the roles that every reading of
 * what is open agrees on.
 */
public final class TreePart {
  /** More readings of open costs than these are not tried. */
  private static final int MOST_READINGS = 256;

  private final List<String> switches;
  private final Optional<String> doubt;
  private final List<String> rootCandidates;
  private final Map<Integer, List<PortRole>> roles;

  private TreePart(
      List<String> switches,
      Optional<String> doubt,
      List<String> rootCandidates,
      Map<Integer, List<PortRole>> roles) {
    this.switches = List.copyOf(switches);
    this.doubt = doubt;
    this.rootCandidates = List.copyOf(rootCandidates);
    this.roles = Map.copyOf(roles);
  }

  /** A part of which nothing can be told. */
  static TreePart open(List<String> switches, String why) {
    return new TreePart(switches, Optional.of(why), switches, Map.of());
  }

  /**
   * Settles a part.
   *
   * @param switches its switches
   * @param ids their identifiers, in the same order
   * @param links what joins them
   */
  static TreePart settle(List<String> switches, List<BridgeId> ids, List<TreeLink> links) {
    Map<String, Integer> index = new HashMap<>();
    switches.forEach(name -> index.put(name, index.size()));
    List<Segment> shape =
        links.stream()
            .map(link -> Segment.link(end(index, link.first(), 1), end(index, link.second(), 1)))
            .toList();
    List<String> lowest =
        ActiveTopology.of(ids, shape).rootCandidates(0).stream().map(switches::get).toList();
    Map<Integer, List<PortRole>> roles = new HashMap<>();
    for (Map<String, Long> reading : readings(links)) {
      agree(roles, index, ids, links, reading);
    }
    return new TreePart(switches, Optional.empty(), lowest, roles);
  }

  private static End end(Map<String, Integer> index, TreeEnd end, long cost) {
    return new End(
        index.get(end.switchName()), end.id().orElse(new PortId(PortId.DEFAULT_PRIORITY, 0)), cost);
  }

  /** Every reading of the costs; none where one is not bounded, or where they are too many. */
  private static List<Map<String, Long>> readings(List<TreeLink> links) {
    if (!links.stream().allMatch(TreeLink::isBounded)) {
      return List.of();
    }
    List<Map<String, Long>> readings = List.of(new HashMap<>());
    for (TreeLink link : links) {
      for (TreeEnd end : List.of(link.first(), link.second())) {
        readings = multiplied(readings, end.cost().orElseThrow());
        if (readings.size() > MOST_READINGS) {
          return List.of();
        }
      }
    }
    return readings;
  }

  private static List<Map<String, Long>> multiplied(
      List<Map<String, Long>> readings, CostRange range) {
    if (readings.get(0).containsKey(range.name())) {
      return readings;
    }
    List<Map<String, Long>> more = new ArrayList<>();
    for (Map<String, Long> reading : readings) {
      for (long cost = range.least(); cost <= range.most(); cost++) {
        Map<String, Long> next = new HashMap<>(reading);
        next.put(range.name(), cost);
        more.add(next);
      }
    }
    return more;
  }

  private static void agree(
      Map<Integer, List<PortRole>> roles,
      Map<String, Integer> index,
      List<BridgeId> ids,
      List<TreeLink> links,
      Map<String, Long> reading) {
    List<Segment> segments =
        links.stream()
            .map(
                link ->
                    Segment.link(
                        end(index, link.first(), cost(link.first(), reading)),
                        end(index, link.second(), cost(link.second(), reading))))
            .toList();
    ActiveTopology topology = ActiveTopology.of(ids, segments);
    for (int at = 0; at < links.size(); at++) {
      roles.merge(
          links.get(at).index(),
          List.of(topology.role(at, 0), topology.role(at, 1)),
          (one, other) ->
              List.of(agreed(one.get(0), other.get(0)), agreed(one.get(1), other.get(1))));
    }
  }

  private static long cost(TreeEnd end, Map<String, Long> reading) {
    return reading.get(end.cost().orElseThrow().name());
  }

  private static PortRole agreed(PortRole one, PortRole other) {
    return one == other ? one : PortRole.UNDECIDED;
  }

  /** The switches of the part, in design order. */
  public List<String> switches() {
    return switches;
  }

  /** Why nothing of the part can be told, a clause; empty where it can. */
  public Optional<String> doubt() {
    return doubt;
  }

  /** The switches that may be the root: one where it is decided, all where nothing is. */
  public List<String> rootCandidates() {
    return rootCandidates;
  }

  /** The root, where it is decided. */
  public Optional<String> root() {
    return doubt.isEmpty() && rootCandidates.size() == 1
        ? Optional.of(rootCandidates.get(0))
        : Optional.empty();
  }

  /**
   * The roles of the first and the second end of every link that they are told of, by its index.
   */
  Map<Integer, List<PortRole>> roles() {
    return roles;
  }

  /** The roles of the first and the second end of a link of the part, by its index. */
  public List<PortRole> roles(int link) {
    return roles.getOrDefault(link, List.of(PortRole.UNDECIDED, PortRole.UNDECIDED));
  }
}
