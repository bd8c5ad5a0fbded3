package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import plumbline.design.Design;
import plumbline.design.DesignVlan;
import plumbline.fabric.Fabric;
import plumbline.vlan.VlanId;

/** What a design promises about each VLAN, in one network. */
public final class Promises {
  private final Fabric fabric;
  private final Attached attached;
  private final Map<VlanId, VlanSide> sides = new HashMap<>();

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
                attached.routers(one)));
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
      Aim.InDomain domain = Aim.InDomain.of(side);
      aims.addAll(domain.anchors().isEmpty() ? List.of() : List.of(domain));
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
