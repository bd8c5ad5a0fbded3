package plumbline.promise;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.fabric.Carriage;
import plumbline.fabric.Fabric;
import plumbline.fabric.Failure;
import plumbline.fabric.VlanGraph;
import plumbline.fabric.VlanGraph.Point;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** One VLAN of one network: who reaches what in it, whole or with one thing failed. */
public final class VlanSide {
  static final Failure NOTHING = new Failure.None();

  private final Fabric fabric;
  private final VlanId vlan;
  private final Carriage carriage;
  private final List<Member> members;
  private final List<Router> routers;
  private final List<Plug> exits;

  VlanSide(
      Fabric fabric, VlanId vlan, List<Member> members, List<Router> routers, List<Plug> exits) {
    this.exits = List.copyOf(exits);
    this.fabric = fabric;
    this.vlan = vlan;
    this.carriage = fabric.carriage(vlan);
    this.members = List.copyOf(members);
    this.routers = List.copyOf(routers);
  }

  /** The same with another idea of where frames go. */
  VlanSide(VlanSide side, Carriage carriage) {
    this.fabric = side.fabric;
    this.vlan = side.vlan;
    this.carriage = carriage;
    this.members = side.members;
    this.exits = side.exits;
    this.routers = side.routers;
  }

  /** The network. */
  Fabric fabric() {
    return fabric;
  }

  /** The VLAN. */
  public VlanId vlan() {
    return vlan;
  }

  Carriage carriage() {
    return carriage;
  }

  /** Who needs the VLAN, in design order. */
  public List<Member> members() {
    return members;
  }

  /** Who routes it by design. */
  public List<Router> routers() {
    return routers;
  }

  /** Whether a plug passes the VLAN while something fails. */
  Truth works(Plug plug, Failure failure) {
    return plug.isCut(failure) || fabric.isDown(plug.point(), failure) ? Truth.NO : plug.works();
  }

  /** Whether frames from a plug reach one of others while something fails. */
  private Truth reaches(Plug from, List<Plug> others, Failure failure) {
    Truth best = Truth.NO;
    Truth own = works(from, failure);
    if (own == Truth.NO) {
      return own;
    }
    for (Plug to : others) {
      Truth there = own.and(works(to, failure));
      if (there == Truth.NO || (there == Truth.UNKNOWN && best == Truth.UNKNOWN)) {
        continue;
      }
      Truth joined = there.and(carriage.joins(from.point(), to.point(), failure));
      if (joined == Truth.YES) {
        return joined;
      }
      best = joined == Truth.UNKNOWN ? joined : best;
    }
    boolean around =
        best == Truth.NO
            && leaves(from, failure)
            && others.stream().anyMatch(to -> leaves(to, failure));
    return around ? Truth.UNKNOWN : best;
  }

  /**
   * Whether frames from a plug may get to where the design does not look: over a link that leaves
   * it, or from a switch of which it names no link at all.
   */
  boolean leaves(Plug plug, Failure failure) {
    return works(plug, failure) != Truth.NO
        && exits.stream()
            .anyMatch(
                exit ->
                    works(exit, failure) != Truth.NO
                        && carriage.joins(plug.point(), exit.point(), failure) != Truth.NO);
  }

  /** Whether frames pass between two switches; a way outside the design cannot be told. */
  public Truth joins(Point one, Point other) {
    return reaches(place(one), List.of(place(other)), NOTHING);
  }

  private static Plug place(Point point) {
    return new Plug(point, false, Truth.YES, Optional.empty());
  }

  /** Whether frames from a plug reach what an aim asks for while something fails. */
  Truth holds(Plug plug, Aim aim, Failure failure) {
    if (aim instanceof Aim.InDomain domain) {
      return domain
          .at(this, failure)
          .map(middle -> reaches(plug, List.of(place(middle)), failure))
          .orElse(Truth.NO);
    }
    return aim instanceof Aim.ToGateway
        ? reaches(plug, gateways(failure), failure)
        : works(plug, failure);
  }

  /** The same of a member: one of its plugs is enough. */
  Truth holds(Member member, Aim aim, Failure failure) {
    if (failure.equals(new Failure.OfVlan(vlan))
        || (member.kind() == Member.Kind.HOST
            && failure.equals(new Failure.OfHost(member.name())))) {
      return Truth.NO;
    }
    Truth best = Truth.NO;
    for (Plug plug : member.plugs()) {
      Truth one = holds(plug, aim, failure);
      if (one == Truth.YES) {
        return one;
      }
      best = one == Truth.UNKNOWN ? one : best;
    }
    return best;
  }

  /**
   * The links, by index, that lead out of the parts of the VLAN that some places are in while
   * something fails, and that do not carry it, or over which spanning tree does not lead.
   */
  public List<Integer> barriers(List<VlanGraph.Point> points, Failure failure) {
    int[] parts = fabric.parts(vlan, carriage, failure);
    Set<Integer> inside = new HashSet<>();
    points.forEach(point -> inside.add(parts[fabric.box(point)]));
    inside.remove(-1);
    return fabric.boundary(parts, inside);
  }

  /** The plugs of the gateways that have not failed. */
  List<Plug> gateways(Failure failure) {
    List<Plug> plugs = new ArrayList<>();
    for (Router router : routers) {
      if (!failure.equals(new Failure.OfGateway(router.name()))) {
        plugs.addAll(router.plugs());
      }
    }
    return plugs;
  }

  /** Whether some plug of a member is left while something fails. */
  boolean isThere(Member member, Failure failure) {
    return member.plugs().stream().anyMatch(plug -> works(plug, failure) != Truth.NO);
  }

  /**
   * The failures that may take what holds now from a member: those on one walk that holds. What
   * cuts all walks is on each of them.
   */
  Set<Failure> suspects(Member member, Aim aim) {
    Set<Failure> found = new LinkedHashSet<>();
    for (Plug plug : member.plugs()) {
      if (holds(plug, aim, NOTHING) == Truth.YES) {
        suspects(found, plug, aim);
        return found;
      }
    }
    return found;
  }

  /** The same of one plug. */
  void suspects(Set<Failure> found, Plug plug, Aim aim) {
    if (plug.cable()) {
      found.add(new Failure.OfPort(plug.point().switchName(), plug.point().port()));
    }
    if (aim instanceof Aim.Present) {
      found.addAll(carriage.suspects(plug.point(), plug.point()));
      return;
    }
    for (Router router : aim instanceof Aim.ToGateway ? routers : List.<Router>of()) {
      for (Plug to : router.plugs()) {
        if (reaches(plug, List.of(to), NOTHING) == Truth.YES) {
          found.addAll(carriage.suspects(plug.point(), to.point()));
          found.add(new Failure.OfGateway(router.name()));
          end(found, to);
          return;
        }
      }
    }
    if (aim instanceof Aim.InDomain domain) {
      found.addAll(carriage.suspects(plug.point(), domain.middle()));
    }
  }

  private static void end(Set<Failure> found, Plug to) {
    if (to.cable()) {
      found.add(new Failure.OfPort(to.point().switchName(), to.point().port()));
    }
  }
}
