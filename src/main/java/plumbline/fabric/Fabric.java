package plumbline.fabric;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Carried;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * The switches of a design, joined by its links as the effective settings of both ends let them. A
 * link that leaves the design joins nothing.
 */
public final class Fabric {
  private final Design design;
  private final Map<String, SwitchSettings> settings;
  private final Chassis chassis;
  private final List<FabricLink> links;
  private final Map<List<BitSet>, VlanGraph> graphs = new HashMap<>();
  private final Map<OptionalInt, Forwarding> trees = new HashMap<>();
  private final Map<String, MstRegion> regions = new HashMap<>();
  private final List<LinkFacts> facts;

  private Fabric(Design design, Map<String, SwitchSettings> settings) {
    this.design = design;
    this.settings = Map.copyOf(settings);
    this.chassis = Chassis.of(design);
    Set<DesignPort> shared = shared(design);
    List<FabricLink> joined = new ArrayList<>();
    design.links().stream()
        .filter(link -> link.second().isPresent())
        .forEach(
            link ->
                joined.add(
                    FabricLink.of(
                        link,
                        settings(link.first().switchName()),
                        settings(link.second().get().switchName()),
                        shared)));
    this.links = List.copyOf(joined);
    this.facts = links.stream().map(LinkFacts::of).toList();
  }

  /** The ports that two links end on: bundles that end on both switches of a pair. */
  private static Set<DesignPort> shared(Design design) {
    Set<DesignPort> once = new HashSet<>();
    return design.links().stream()
        .flatMap(link -> Stream.concat(Stream.of(link.first()), link.second().stream()))
        .filter(port -> !once.add(port))
        .collect(Collectors.toUnmodifiableSet());
  }

  /**
   * Joins switches.
   *
   * @param settings what was read, by the switch's name in the design
   */
  public static Fabric of(Design design, Map<String, SwitchSettings> settings) {
    return new Fabric(design, settings);
  }

  /** The design. */
  public Design design() {
    return design;
  }

  /** The settings of a switch, if its config was read. */
  public Optional<SwitchSettings> settings(String switchName) {
    return Optional.ofNullable(settings.get(switchName));
  }

  /** The MST region of a switch whose config was read, whatever its mode. */
  public MstRegion region(String switchName) {
    return regions.computeIfAbsent(switchName, name -> MstRegion.of(settings(name).orElseThrow()));
  }

  /** The links between switches of the design, in its order. */
  public List<FabricLink> links() {
    return links;
  }

  /** What trees ask of each link again and again. */
  LinkFacts facts(int link) {
    return facts.get(link);
  }

  /** Where frames of a VLAN go between switches. */
  public VlanGraph graph(VlanId vlan) {
    BitSet certain = new BitSet();
    BitSet possible = new BitSet();
    for (int link = 0; link < links.size(); link++) {
      Carried crossing = facts.get(link).crosses();
      certain.set(link, crossing.certain().contains(vlan));
      possible.set(link, crossing.possible().contains(vlan));
    }
    // many VLANs cross the same links
    return graphs.computeIfAbsent(
        List.of(certain, possible), any -> new VlanGraph(chassis, links, certain, possible));
  }

  /** The parts of a spanning tree while something fails, in design order. */
  public List<TreePart> tree(TreeScope scope, Failure failure) {
    return TreeSurvey.of(this, scope, failure);
  }

  /**
   * Where frames of a VLAN go between switches, spanning tree taken into account where it does not
   * go by what links carry.
   */
  public Carriage carriage(VlanId vlan) {
    return ShapingTree.of(this, vlan)
        .<Carriage>map(
            scope ->
                new TreeGraph(
                    this,
                    chassis,
                    vlan,
                    trees.computeIfAbsent(scope.instance(), any -> new Forwarding(this, scope))))
        .orElseGet(() -> graph(vlan));
  }

  /** Whether a box is the one that fails. */
  boolean isDown(int box, Failure failure) {
    return failure instanceof Failure.OfSwitch down
        && chassis.indexOf(down.name(), down.member()) == box;
  }

  /** Whether the box that a place is on is the one that fails. */
  public boolean isDown(VlanGraph.Point point, Failure failure) {
    return isDown(chassis.indexOf(point.switchName(), point.port()), failure);
  }

  /** The index of the box that a place is on, as {@link #parts} counts them. */
  public int box(VlanGraph.Point point) {
    return chassis.indexOf(point.switchName(), point.port());
  }

  /**
   * For each switch, or member of a stack, the part of a VLAN that it is in, for certain or
   * perhaps, while something fails, as the number of one of them; -1 for the one that fails.
   */
  public int[] parts(VlanId vlan, Carriage carriage, Failure failure) {
    Parts parts = new Parts(chassis.count(), box -> isDown(box, failure));
    joins(vlan, carriage, failure, false).forEach(parts::join);
    return parts.all();
  }

  /**
   * The boxes that a VLAN joins while something fails, in pairs.
   *
   * @param surely whether only what joins them for certain counts
   */
  List<Connectivity.Edge> joins(VlanId vlan, Carriage carriage, Failure failure, boolean surely) {
    List<Connectivity.Edge> edges = new ArrayList<>(chassis.rings());
    edges.removeIf(edge -> isDown(edge.one(), failure) || isDown(edge.other(), failure));
    for (int link = 0; link < links.size(); link++) {
      Truth forwards = carriage.forwards(link, failure);
      if (surely ? forwards == Truth.YES : forwards != Truth.NO) {
        edges.addAll(surely ? joinedBy(link, vlan, failure) : mayJoin(link, vlan, failure));
      }
    }
    return edges;
  }

  /** How many switches and members of stacks there are. */
  public int boxes() {
    return chassis.count();
  }

  /** Some place on a box. */
  VlanGraph.Point placeOn(int box) {
    Chassis.Box of = chassis.box(box);
    return VlanGraph.Point.ofMember(of.name(), of.member().orElse(0));
  }

  /** The failure of the switch, or member of a stack, that a place is on. */
  public Failure switchAt(VlanGraph.Point point) {
    Chassis.Box box = chassis.box(box(point));
    return new Failure.OfSwitch(box.name(), box.member());
  }

  /** The links, by index, of which one end is in some of these parts and the other in none. */
  public List<Integer> boundary(int[] parts, Set<Integer> inside) {
    return IntStream.range(0, links.size())
        .filter(
            link -> {
              Connectivity.Edge edge = chassis.between(links.get(link));
              return inside.contains(parts[edge.one()]) != inside.contains(parts[edge.other()]);
            })
        .boxed()
        .toList();
  }

  /**
   * The boxes that a link joins in a VLAN for certain while something fails, in pairs, whether a
   * tree forwards there or not; none where it does not carry the VLAN then.
   */
  public List<Connectivity.Edge> joinedBy(int link, VlanId vlan, Failure failure) {
    return facts.get(link).crosses().certain().contains(vlan)
        ? edges(link, failure, true)
        : List.of();
  }

  /** The boxes that it joins for certain or perhaps. */
  public List<Connectivity.Edge> mayJoin(int link, VlanId vlan, Failure failure) {
    return facts.get(link).crosses().possible().contains(vlan)
        ? edges(link, failure, false)
        : List.of();
  }

  /** Every single failure of a switch, stack member, link or cable of a bundle, in design order. */
  public List<Failure> failures() {
    return SingleFailures.of(chassis, links);
  }

  /** Whether enough cables of a link are left while something fails, whatever it carries. */
  public boolean mayStand(int link, Failure failure) {
    return links.get(link).isUp() != Truth.NO && !edges(link, failure, false).isEmpty();
  }

  /** Where frames would go that every open link carries. */
  public Carriage openPaths() {
    BitSet certain = new BitSet();
    BitSet possible = new BitSet();
    for (int link = 0; link < links.size(); link++) {
      certain.set(link, facts.get(link).open() == Truth.YES);
      possible.set(link, facts.get(link).open() != Truth.NO);
    }
    return new VlanGraph(chassis, links, certain, possible);
  }

  /** Whether spanning tree runs over a link while something fails. */
  public Truth isOpen(int link, Failure failure) {
    return facts.get(link).open().and(stands(link, failure));
  }

  /** Whether a link that is up stays up while something fails. */
  Truth stands(int link, Failure failure) {
    FabricLink of = links.get(link);
    if (failure instanceof Failure.OfLink cut) {
      return Truth.of(cut.link() != link);
    }
    if (failure instanceof Failure.OfCable cut && cut.link() == link) {
      return of.cables().get(cut.cable()).up() == Truth.NO ? Truth.YES : of.survivesCable();
    }
    if (failure instanceof Failure.OfSwitch down) {
      boolean whole =
          down.member().isEmpty()
              && of.ends().stream().anyMatch(end -> end.port().switchName().equals(down.name()));
      return whole ? Truth.NO : down.member().isEmpty() ? Truth.YES : survivesBox(of, down);
    }
    return Truth.YES;
  }

  /**
   * The boxes that a link joins while something fails: cable by cable, so that a bundle may end on
   * several members of a stack.
   *
   * @param surely whether only cables count that are up for certain
   */
  List<Connectivity.Edge> edges(int link, Failure failure, boolean surely) {
    Truth stands = stands(link, failure);
    if (stands == Truth.NO || (surely && stands != Truth.YES)) {
      return List.of();
    }
    FabricLink of = links.get(link);
    List<Connectivity.Edge> edges = new ArrayList<>();
    for (int cable = 0; cable < of.cables().size(); cable++) {
      Cable one = of.cables().get(cable);
      boolean up = surely ? one.up() == Truth.YES : one.up() != Truth.NO;
      if (up && !failure.equals(new Failure.OfCable(link, cable))) {
        edges.add(
            new Connectivity.Edge(
                chassis.indexOf(of.first().port().switchName(), one.first()),
                chassis.indexOf(of.second().port().switchName(), one.second())));
      }
    }
    if (of.cables().isEmpty()) {
      edges.add(chassis.between(of));
    }
    edges.removeIf(edge -> isDown(edge.one(), failure) || isDown(edge.other(), failure));
    return edges;
  }

  /** Whether a link stays up when a member of a stack takes its cables with it. */
  Truth survivesBox(FabricLink link, Failure.OfSwitch box) {
    int failed = chassis.indexOf(box.name(), box.member());
    int lost = 0;
    for (Cable cable : link.cables()) {
      boolean ends =
          chassis.indexOf(link.first().port().switchName(), cable.first()) == failed
              || chassis.indexOf(link.second().port().switchName(), cable.second()) == failed;
      lost += ends && cable.up() != Truth.NO ? 1 : 0;
    }
    return lost == 0 ? Truth.YES : link.survives(lost);
  }
}
