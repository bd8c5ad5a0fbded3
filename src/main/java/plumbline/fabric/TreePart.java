package plumbline.fabric;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import plumbline.design.DesignPort;
import plumbline.fabric.Segment.End;
import plumbline.fabric.TreeLink.TreeEnd;

/**
 * One connected part of a spanning tree: who may be its root, and the roles that every reading of
 * what is open agrees on.
 */
public final class TreePart {
  /** More readings of open costs than these are not tried. */
  private static final int MOST_READINGS = 256;

  private final List<TreeBridge> bridges;
  private final Supplier<List<TreeLink>> links;
  private final Optional<String> doubt;
  private final List<DesignPort> barring;
  private final boolean hasRoles;
  private final List<String> rootCandidates;

  /** Few ask for them, and they cost much. */
  private Optional<Map<Integer, List<PortRole>>> roles = Optional.empty();

  private TreePart(
      List<TreeBridge> bridges,
      Supplier<List<TreeLink>> links,
      Optional<String> doubt,
      List<DesignPort> barring,
      boolean hasRoles) {
    this.bridges = List.copyOf(bridges);
    this.links = links;
    this.doubt = doubt;
    this.barring = List.copyOf(barring);
    this.hasRoles = hasRoles && doubt.isEmpty();
    this.rootCandidates = doubt.isPresent() ? switches() : lowest(bridges);
  }

  /** A part of which nothing can be told as a whole. */
  static TreePart open(List<TreeBridge> bridges, String why) {
    return new TreePart(bridges, List::of, Optional.of(why), List.of(), false);
  }

  /** A part of which only the root can be told. */
  static TreePart withoutRoles(List<TreeBridge> bridges) {
    return new TreePart(bridges, List::of, Optional.empty(), List.of(), false);
  }

  /**
   * Settles a part.
   *
   * @param bridges its switches, whose identifiers are all known
   * @param links what joins them
   */
  static TreePart settle(List<TreeBridge> bridges, Supplier<List<TreeLink>> links) {
    return new TreePart(bridges, links, Optional.empty(), List.of(), true);
  }

  /**
   * The same, unless a root guard keeps the root out.
   *
   * @param guards the root guards that might act
   */
  TreePart guarded(List<RootGuards.Guard> guards) {
    List<RootGuards.Guard> doubtful =
        guards.stream().filter(guard -> roleAt(guard) != PortRole.DESIGNATED).toList();
    if (doubtful.isEmpty()) {
      return this;
    }
    DesignPort first = doubtful.get(0).port();
    return new TreePart(
        bridges,
        links,
        Optional.of(
            "a root guard at "
                + first.switchName()
                + " "
                + first.port()
                + " may keep the root out"),
        doubtful.stream()
            .filter(guard -> guard.isOn() && roleAt(guard) != PortRole.UNDECIDED)
            .map(RootGuards.Guard::port)
            .toList(),
        false);
  }

  private PortRole roleAt(RootGuards.Guard guard) {
    return roles(guard.link()).get(guard.end());
  }

  /** The bridges that no other beats for certain. */
  private static List<String> lowest(List<TreeBridge> bridges) {
    List<TreeBridge> lowest = new ArrayList<>();
    for (TreeBridge bridge : bridges) {
      if (lowest.stream().noneMatch(other -> other.beats(bridge))) {
        lowest.removeIf(bridge::beats);
        lowest.add(bridge);
      }
    }
    return lowest.stream().map(TreeBridge::name).toList();
  }

  private Map<Integer, List<PortRole>> computed() {
    List<TreeLink> all = links.get();
    Map<String, Integer> index = new HashMap<>();
    switches().forEach(name -> index.put(name, index.size()));
    List<BridgeId> ids = bridges.stream().map(bridge -> bridge.id().orElseThrow()).toList();
    Map<Integer, List<PortRole>> agreed = new HashMap<>();
    for (Map<String, Long> reading : readings(all)) {
      agree(agreed, index, ids, all, reading);
    }
    return agreed;
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
    return bridges.stream().map(TreeBridge::name).toList();
  }

  /** Whether the configs of all its switches were read. */
  public boolean isRead() {
    return bridges.stream().allMatch(TreeBridge::read);
  }

  /** Why the part as a whole cannot be told, a clause; empty where it can. */
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
   * The switches that come before one of the part for certain, so that it cannot be the root while
   * they are there: the best first. They are told where others of the part leave the root open,
   * too.
   */
  public List<String> ahead(String name) {
    TreeBridge behind = named(name);
    return bridges.stream()
        .filter(other -> other.comesBefore(behind))
        .sorted(
            Comparator.<TreeBridge>comparingInt(one -> one.id().orElseThrow().priority())
                .thenComparingLong(one -> one.id().orElseThrow().address().orElse(Long.MAX_VALUE)))
        .map(TreeBridge::name)
        .toList();
  }

  /** The other switches of the part that one of it does not beat for certain. */
  public List<String> unbeaten(String name) {
    TreeBridge first = named(name);
    return bridges.stream()
        .filter(other -> !other.equals(first) && !first.beats(other))
        .map(TreeBridge::name)
        .toList();
  }

  private TreeBridge named(String name) {
    return bridges.stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
  }

  /** The same part if a switch of it were the root; of a part with a doubt nothing is told then. */
  public TreePart withRoot(String name) {
    List<TreeBridge> moved =
        bridges.stream()
            .map(
                one ->
                    one.name().equals(name)
                        ? new TreeBridge(
                            name, one.read(), Optional.of(BridgeId.of(0, 0)), false, one.joined())
                        : one)
            .toList();
    return new TreePart(moved, links, doubt, barring, hasRoles);
  }

  /** The ports whose root guard may keep the root out, each blocking its link then. */
  public List<DesignPort> barring() {
    return barring;
  }

  /**
   * The roles of the first and the second end of every link that they are told of, by its index.
   */
  public Map<Integer, List<PortRole>> roles() {
    if (roles.isEmpty()) {
      roles = Optional.of(hasRoles ? Map.copyOf(computed()) : Map.of());
    }
    return roles.get();
  }

  /** The roles of the first and the second end of a link of the part, by its index. */
  public List<PortRole> roles(int link) {
    return roles().getOrDefault(link, List.of(PortRole.UNDECIDED, PortRole.UNDECIDED));
  }
}
