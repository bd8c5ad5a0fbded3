package plumbline.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import plumbline.design.Design;
import plumbline.design.DesignPort;
import plumbline.design.DesignVlan;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.fabric.Joint;
import plumbline.fabric.LinkEnd;
import plumbline.fabric.VlanGraph.Point;
import plumbline.port.PortKind;
import plumbline.port.PortName;
import plumbline.vlan.VlanId;

/** The parts of VLANs that links with two VLANs for untagged frames make one. */
final class Domains {
  private final Fabric fabric;
  private final Map<VlanId, int[]> parts = new HashMap<>();
  private final Map<Part, Set<Part>> joined = new HashMap<>();

  /**
   * A part of a VLAN.
   *
   * @param vlan the VLAN
   * @param number one of the boxes in it
   */
  private record Part(VlanId vlan, int number) {}

  /**
   * Joins VLANs.
   *
   * @param joints the links that join two for certain
   */
  Domains(Fabric fabric, List<Joint> joints) {
    this.fabric = fabric;
    for (Joint joint : joints) {
      Part first = first(joint);
      Part second = second(joint);
      joined.computeIfAbsent(first, any -> new HashSet<>()).add(second);
      joined.computeIfAbsent(second, any -> new HashSet<>()).add(first);
    }
  }

  private Part first(Joint joint) {
    return part(fabric.links().get(joint.link()).first(), joint.vlans().first());
  }

  private Part second(Joint joint) {
    return part(fabric.links().get(joint.link()).second(), joint.vlans().second());
  }

  private Part part(LinkEnd end, VlanId vlan) {
    return new Part(vlan, number(vlan, new Point(end.port().switchName(), end.port().port())));
  }

  private int number(VlanId vlan, Point point) {
    return parts
        .computeIfAbsent(vlan, one -> fabric.parts(one, fabric.carriage(one), new Failure.None()))[
        fabric.box(point)];
  }

  /**
   * Two VLANs that a link makes one, by itself or with others.
   *
   * @param one the lower
   * @param other the higher
   */
  record Pair(DesignVlan one, DesignVlan other) {
    /** Both. */
    List<DesignVlan> both() {
      return List.of(one, other);
    }
  }

  /** The pairs of declared VLANs that a link takes part in joining, by number. */
  List<Pair> pairs(Joint joint) {
    List<DesignVlan> declared =
        component(joint).stream()
            .map(Part::vlan)
            .distinct()
            .flatMap(vlan -> fabric.design().vlan(vlan).stream())
            .sorted(Comparator.comparing(DesignVlan::id))
            .toList();
    List<Pair> pairs = new ArrayList<>();
    for (int one = 0; one < declared.size(); one++) {
      for (int other = one + 1; other < declared.size(); other++) {
        Pair pair = new Pair(declared.get(one), declared.get(other));
        if (between(joint, in(pair.one()), in(pair.other()))) {
          pairs.add(pair);
        }
      }
    }
    return pairs;
  }

  private static Predicate<Part> in(DesignVlan vlan) {
    return part -> part.vlan().equals(vlan.id());
  }

  /** Whether a link takes part in leading frames of a VLAN to a gateway of another one. */
  boolean leadsToGateway(Joint joint, DesignVlan from, DesignVlan to) {
    Set<Integer> routed = routed(to);
    return between(joint, in(from), in(to).and(part -> routed.contains(part.number())));
  }

  /** The parts of a VLAN in which one of its designed gateways is. */
  private Set<Integer> routed(DesignVlan vlan) {
    Design design = fabric.design();
    return design.gateways().values().stream()
        .filter(gateway -> gateway.vlans().stream().anyMatch(one -> one.vlan().equals(vlan)))
        .flatMap(
            gateway ->
                gateway.outside().isEmpty()
                    ? Stream.of(
                        new Point(gateway.name(), PortName.of(PortKind.VLAN, vlan.id().number())))
                    : gateway.outside().stream().map(Domains::point))
        .map(point -> number(vlan.id(), point))
        .collect(Collectors.toSet());
  }

  private static Point point(DesignPort port) {
    return new Point(port.switchName(), port.port());
  }

  /** Whether a walk from some parts to others goes over a link. */
  private boolean between(Joint joint, Predicate<Part> from, Predicate<Part> to) {
    Part one = first(joint);
    Part other = second(joint);
    return (reaches(one, from, other) && reaches(other, to, one))
        || (reaches(other, from, one) && reaches(one, to, other));
  }

  private boolean reaches(Part start, Predicate<Part> wanted, Part without) {
    return walk(start, without).stream().anyMatch(wanted);
  }

  private Set<Part> component(Joint joint) {
    Set<Part> all = new HashSet<>(walk(first(joint), second(joint)));
    all.addAll(walk(second(joint), first(joint)));
    return all;
  }

  private Set<Part> walk(Part start, Part without) {
    Set<Part> seen = new HashSet<>(Set.of(start));
    Deque<Part> open = new ArrayDeque<>(seen);
    while (!open.isEmpty()) {
      for (Part next : joined.getOrDefault(open.remove(), Set.of())) {
        if (!next.equals(without) && seen.add(next)) {
          open.add(next);
        }
      }
    }
    return seen;
  }

  /** Whether hosts or devices of the port sheets live in a VLAN by design. */
  boolean isInhabited(DesignVlan vlan) {
    return fabric.design().ports().values().stream()
        .flatMap(ports -> ports.values().stream())
        .filter(
            port -> port.place() == DesignPort.Place.HOST || port.place() == DesignPort.Place.SHEET)
        .anyMatch(port -> port.role().neededVlans().contains(vlan.id()));
  }

  /** The link of a joint. */
  FabricLink link(Joint joint) {
    return fabric.links().get(joint.link());
  }

  /** The numbers of VLANs, ascending. */
  static Set<Integer> numbers(List<Pair> pairs) {
    return pairs.stream()
        .flatMap(pair -> pair.both().stream())
        .flatMapToInt(vlan -> IntStream.of(vlan.id().number()))
        .boxed()
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
