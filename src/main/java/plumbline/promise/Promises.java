package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import plumbline.design.Design;
import plumbline.design.DesignVlan;
import plumbline.design.Service;
import plumbline.fabric.Carriage;
import plumbline.fabric.Fabric;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** What a design promises about each VLAN, in one network. */
public final class Promises {
  private final Fabric fabric;
  private final Attached attached;
  private final Map<VlanId, VlanSide> sides = new HashMap<>();

  private List<SinglePoint> points;

  private Promises(Fabric fabric) {
    this.fabric = fabric;
    this.attached = Attached.to(fabric);
  }

  /** Looks at a network. */
  public static Promises in(Fabric fabric) {
    return new Promises(fabric);
  }

  /** The design. */
  public Design design() {
    return fabric.design();
  }

  /** The VLANs that somebody needs or routes, ascending. */
  public SortedSet<VlanId> vlans() {
    return attached.vlans();
  }

  /** One VLAN; it is kept, so that services can ask for it again. */
  public VlanSide side(VlanId vlan) {
    return sides.computeIfAbsent(
        vlan,
        one ->
            new VlanSide(
                fabric,
                one,
                attached.members().getOrDefault(one, List.of()),
                attached.routers(one),
                attached.exits(one)));
  }

  /** Whether everybody in a VLAN reaches one of its gateways; empty where it has none. */
  public Optional<Reaching> toGateway(VlanId vlan) {
    VlanSide side = side(vlan);
    return side.routers().isEmpty()
        ? Optional.empty()
        : Optional.of(Reaching.of(side, new Aim.ToGateway()));
  }

  /** Whether everybody in a VLAN reaches the rest of it; empty where nobody is there. */
  public Optional<Reaching> inDomain(VlanId vlan) {
    VlanSide side = side(vlan);
    return Aim.InDomain.of(side).map(domain -> Reaching.of(side, domain));
  }

  /** The things whose own failure takes a VLAN from somebody while others keep it. */
  public List<SinglePoint> singlePoints() {
    if (points == null) {
      points = SinglePoints.in(this);
    }
    return points;
  }

  /** Where frames of a VLAN would go that every link carries. */
  Carriage openPaths() {
    return fabric.openPaths();
  }

  /** A service. */
  public ServiceSide service(Service service) {
    return new ServiceSide(this, service);
  }

  /**
   * The failures outside hosts that take a VLAN from everybody in it, who reaches there now what
   * they are promised.
   */
  public Set<Failure> taking(VlanId vlan) {
    VlanSide side = side(vlan);
    List<Aim> aims = aims(side);
    Set<Failure> taking = new LinkedHashSet<>();
    boolean first = true;
    for (Member member : side.members()) {
      boolean counts = member.kind() == Member.Kind.HOST || member.kind() == Member.Kind.DEVICE;
      if (counts && side.holds(member, aims.get(0), VlanSide.NOTHING) == Truth.YES) {
        if (first) {
          taking.addAll(side.suspects(member, aims.get(0)));
        }
        first = false;
        taking.removeIf(failure -> side.holds(member, aims.get(0), failure) != Truth.NO);
      }
    }
    return taking;
  }

  /** What members of a VLAN are promised to reach: the first is what everybody needs most. */
  static List<Aim> aims(VlanSide side) {
    List<Aim> aims = new ArrayList<>();
    boolean several = side.members().size() > 1;
    if (!side.routers().isEmpty()) {
      aims.add(new Aim.ToGateway());
    }
    if (several && (side.routers().isEmpty() || isOneDomain(side))) {
      // where nobody is left there is no domain to be cut off from
      Aim.InDomain.of(side).ifPresent(aims::add);
    }
    return aims.isEmpty() ? List.of(new Aim.Present()) : aims;
  }

  private static boolean isOneDomain(VlanSide side) {
    return side.fabric().design().vlan(side.vlan()).filter(DesignVlan::oneDomain).isPresent();
  }

  /** The same for one member: what leaves the design needs the VLAN and nothing else here. */
  static List<Aim> aims(Member member, List<Aim> all) {
    return member.kind() == Member.Kind.OUTSIDE ? List.of(new Aim.Present()) : all;
  }
}
