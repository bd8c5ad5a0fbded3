package plumbline.fabric;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import plumbline.fabric.Connectivity.Edge;
import plumbline.setting.Truth;

/**
 * One reading of a VLAN's graph: everything certain, or everything possible. A link that fails is
 * looked at among switches, where its cables are one edge; a cable or a member of a stack among the
 * boxes, where a bundle may end on several.
 */
final class VlanLayer {
  private final Chassis chassis;
  private final List<FabricLink> links;
  private final boolean certain;
  private final Map<Integer, List<CableEdge>> cables = new TreeMap<>();
  private final Map<Integer, Integer> linkEdges = new HashMap<>();
  private final Map<Integer, Connectivity> searched = new HashMap<>();
  private final Map<Integer, CableEdge> byNumber = new HashMap<>();
  private final BitSet fragile = new BitSet();
  private Connectivity switches;
  private Connectivity boxes;

  /**
   * The cables of a link between the same two boxes.
   *
   * @param link index of the link
   * @param edge the boxes
   * @param number the edge among the boxes
   * @param cables indexes of the cables in the link
   */
  private record CableEdge(int link, Edge edge, int number, List<Integer> cables) {}

  VlanLayer(Chassis chassis, List<FabricLink> links, boolean certain) {
    this.chassis = chassis;
    this.links = links;
    this.certain = certain;
  }

  /** Takes a link that carries the VLAN. */
  void add(int link) {
    cables.put(link, List.of());
  }

  /** The links that carry the VLAN, ascending. */
  List<Integer> links() {
    return List.copyOf(cables.keySet());
  }

  /** Walks the graph; no link can be taken after that. */
  void close() {
    List<Edge> ofSwitches = new ArrayList<>();
    List<Edge> ofBoxes = new ArrayList<>(chassis.rings());
    for (Map.Entry<Integer, List<CableEdge>> entry : cables.entrySet()) {
      FabricLink link = links.get(entry.getKey());
      linkEdges.put(entry.getKey(), ofSwitches.size());
      ofSwitches.add(chassis.between(link));
      List<CableEdge> edges = new ArrayList<>();
      byBoxes(link)
          .forEach(
              (edge, these) -> {
                CableEdge one = new CableEdge(entry.getKey(), edge, ofBoxes.size(), these);
                edges.add(one);
                byNumber.put(ofBoxes.size(), one);
                ofBoxes.add(edge);
              });
      entry.setValue(edges);
      markFragile(entry.getKey(), edges);
    }
    switches = Connectivity.of(chassis.count(), ofSwitches);
    boxes = Connectivity.of(chassis.count(), ofBoxes);
  }

  private Map<Edge, List<Integer>> byBoxes(FabricLink link) {
    Map<Edge, List<Integer>> edges = new LinkedHashMap<>();
    for (int cable = 0; cable < link.cables().size(); cable++) {
      if (counts(link.cables().get(cable).up())) {
        edges.computeIfAbsent(edge(link, cable), any -> new ArrayList<>()).add(cable);
      }
    }
    if (edges.isEmpty()) {
      edges.put(chassis.between(link), List.of());
    }
    return edges;
  }

  private Edge edge(FabricLink link, int cable) {
    Cable of = link.cables().get(cable);
    return new Edge(
        chassis.indexOf(link.first().port().switchName(), of.first()),
        chassis.indexOf(link.second().port().switchName(), of.second()));
  }

  private boolean counts(Truth truth) {
    return truth == Truth.YES || (!certain && truth == Truth.UNKNOWN);
  }

  /** Whether frames pass between two boxes while something fails. */
  boolean joins(int from, int to, Failure failure) {
    if (failure instanceof Failure.OfSwitch box) {
      return withoutBox(from, to, chassis.indexOf(box.name(), box.member()));
    }
    if (failure instanceof Failure.OfLink cut) {
      return withoutLink(from, to, cut.link());
    }
    if (failure instanceof Failure.OfCable cut) {
      return withoutCable(from, to, cut);
    }
    return boxes.joins(from, to);
  }

  /** Every failure that may cut two boxes off from each other, where a walk joins them. */
  Set<Failure> suspects(int from, int to) {
    Set<Failure> found = new LinkedHashSet<>();
    for (int end : List.of(from, to)) {
      int at = end;
      found.add(box(at));
      for (int number : boxes.wayDown(end)) {
        CableEdge edge = byNumber.get(number);
        if (edge != null) {
          suspectLink(found, edge.link());
        }
        at = boxes.across(number, at);
        found.add(box(at));
      }
    }
    return found;
  }

  /** A bundle that needs more than one cable may go down with any of them, or with any box. */
  private void suspectLink(Set<Failure> found, int link) {
    found.add(new Failure.OfLink(link));
    for (CableEdge edge : cables.get(link)) {
      if (links.get(link).cables().size() > 1) {
        edge.cables().forEach(cable -> found.add(new Failure.OfCable(link, cable)));
      }
      found.add(box(edge.edge().one()));
      found.add(box(edge.edge().other()));
    }
  }

  private Failure box(int at) {
    return new Failure.OfSwitch(chassis.box(at).name(), chassis.box(at).member());
  }

  private boolean withoutLink(int from, int to, int link) {
    int one = chassis.firstOf(chassis.box(from).name());
    int other = chassis.firstOf(chassis.box(to).name());
    Integer edge = linkEdges.get(link);
    return edge == null ? switches.joins(one, other) : switches.joinsWithoutEdge(one, other, edge);
  }

  private boolean withoutCable(int from, int to, Failure.OfCable cut) {
    CableEdge edge =
        cables.getOrDefault(cut.link(), List.of()).stream()
            .filter(one -> one.cables().contains(cut.cable()))
            .findFirst()
            .orElse(null);
    if (edge == null) {
      return boxes.joins(from, to);
    }
    if (!counts(links.get(cut.link()).survivesCable())) {
      return withoutLink(from, to, cut.link());
    }
    return edge.cables().size() > 1
        ? boxes.joins(from, to)
        : boxes.joinsWithoutEdge(from, to, edge.number());
  }

  private boolean withoutBox(int from, int to, int failed) {
    if (from == failed || to == failed) {
      return false;
    }
    return fragile.get(failed)
        ? searched.computeIfAbsent(failed, this::search).joins(from, to)
        : boxes.joinsWithoutVertex(from, to, failed);
  }

  /** Marks the boxes that take so many cables of a bundle with them that it goes down whole. */
  private void markFragile(int link, List<CableEdge> edges) {
    if (edges.size() < 2) {
      return;
    }
    for (CableEdge edge : edges) {
      for (int box : List.of(edge.edge().one(), edge.edge().other())) {
        if (!counts(links.get(link).survives(cablesAt(edges, box)))) {
          fragile.set(box);
        }
      }
    }
  }

  private static boolean touches(Edge edge, int box) {
    return edge.one() == box || edge.other() == box;
  }

  private static int cablesAt(List<CableEdge> edges, int box) {
    return edges.stream()
        .filter(edge -> touches(edge.edge(), box))
        .mapToInt(edge -> edge.cables().size())
        .sum();
  }

  /** The graph without a box and without the bundles that go down with it. */
  private Connectivity search(int failed) {
    List<Edge> rest =
        new ArrayList<>(chassis.rings().stream().filter(edge -> !touches(edge, failed)).toList());
    cables.forEach(
        (link, edges) -> {
          int lost = cablesAt(edges, failed);
          if (lost == 0 || counts(links.get(link).survives(lost))) {
            edges.stream()
                .map(CableEdge::edge)
                .filter(edge -> !touches(edge, failed))
                .forEach(rest::add);
          }
        });
    return Connectivity.of(chassis.count(), rest);
  }
}
