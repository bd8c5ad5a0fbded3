package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import plumbline.fabric.Connectivity.Edge;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;

/**
 * Which faults take something from a member of a VLAN: those that are part of some smallest set of
 * faults that together does. In the network of what is still joined, for certain or perhaps, the
 * faults are the missing edges; the ones to blame lie on some walk from the member to what it needs
 * that meets no part twice (cuts and walks between two vertices are made of the same edges).
 */
final class Blame {
  private final VlanSide found;
  private final VlanSide designed;
  private final Map<Failure, FaultWalk.Missing> missing = new HashMap<>();

  Blame(VlanSide found, VlanSide designed) {
    this.found = found;
    this.designed = designed;
  }

  /** Whether the VLAN has any fault at all. */
  boolean isWanted() {
    Fabric fabric = found.fabric();
    for (int link = 0; link < fabric.links().size(); link++) {
      // a link that spanning tree blocks now may take over
      if (lacks(link, VlanSide.NOTHING) || losesCables(link)) {
        return true;
      }
    }
    return !plugFaults().isEmpty() || !routerFaults(VlanSide.NOTHING).isEmpty();
  }

  /** Whether a link that carries the VLAN loses it with fewer cables than by design. */
  private boolean losesCables(int link) {
    FabricLink wanted = designed.fabric().links().get(link);
    return wanted.crosses().certain().contains(found.vlan())
        && !found.fabric().links().get(link).standsLike(wanted);
  }

  /** The faults to blame for what a member lacks while something fails. */
  Set<Fault> of(Member member, Aim aim, Failure failure) {
    int index = found.members().indexOf(member);
    return search(member.plugs(), designed.members().get(index).plugs(), aim, failure);
  }

  /** The faults to blame for what one plug of a member, which passes the VLAN, lacks. */
  Set<Fault> of(Plug plug, Aim aim, Failure failure) {
    return search(List.of(plug), List.of(plug), aim, failure);
  }

  private Set<Fault> search(List<Plug> now, List<Plug> wanted, Aim aim, Failure failure) {
    FaultWalk.Missing gaps = missing.computeIfAbsent(failure, this::missing);
    FaultWalk network = new FaultWalk(gaps);
    for (int at = 0; at < now.size(); at++) {
      Plug plug = now.get(at);
      if (found.works(plug, failure) != Truth.NO) {
        network.joinStart(found.fabric().box(plug.point()));
      } else if (designed.works(wanted.get(at), failure) == Truth.YES) {
        network.add(
            FaultWalk.START,
            found.fabric().box(plug.point()),
            plug.cable()
                ? new Fault.OfPlug(found.vlan(), plug.point())
                : new Fault.OfSwitch(found.vlan(), plug.point().switchName()));
      }
    }
    if (aim instanceof Aim.Present) {
      return new LinkedHashSet<>(network.added());
    }
    ends(network, aim, failure);
    return network.toBlame();
  }

  private void ends(FaultWalk network, Aim aim, Failure failure) {
    if (aim instanceof Aim.InDomain domain) {
      domain.at(found, failure).map(found.fabric()::box).ifPresent(network::joinEnd);
      return;
    }
    for (int at = 0; at < found.routers().size(); at++) {
      Router router = found.routers().get(at);
      Router wanted = designed.routers().get(at);
      for (int plug = 0; plug < router.plugs().size(); plug++) {
        Plug here = router.plugs().get(plug);
        int box = found.fabric().box(here.point());
        if (failure.equals(new Failure.OfGateway(router.name()))) {
          continue;
        }
        if (found.works(here, failure) != Truth.NO) {
          network.joinEnd(box);
        } else if (designed.works(wanted.plugs().get(plug), failure) == Truth.YES) {
          network.add(FaultWalk.END, box, new Fault.OfRouter(found.vlan(), router.name()));
        }
      }
    }
  }

  private FaultWalk.Missing missing(Failure failure) {
    int[] parts = found.fabric().parts(found.vlan(), found.carriage(), failure);
    List<Edge> edges = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (int link = 0; link < found.fabric().links().size(); link++) {
      if (isFaulty(link, failure)) {
        for (Edge edge : wanted(link, failure)) {
          for (Fault fault : faults(link, failure)) {
            edges.add(edge);
            faults.add(fault);
          }
        }
      }
    }
    return new FaultWalk.Missing(parts, edges, faults);
  }

  /** The ends may bar the VLAN, the bundle may lack cables, or both. */
  private List<Fault> faults(int link, Failure failure) {
    FabricLink one = found.fabric().links().get(link);
    List<Fault> faults = new ArrayList<>();
    if (!one.crossing().vlans().possible().contains(found.vlan())) {
      faults.add(new Fault.OfLink(found.vlan(), link));
    }
    if (!found.fabric().mayStand(link, failure)) {
      faults.add(new Fault.OfBundle(found.vlan(), link));
    }
    return faults;
  }

  /** What a link would join as designed, whether the tree forwards there or not. */
  private List<Edge> wanted(int link, Failure failure) {
    return designed.fabric().joinedBy(link, designed.vlan(), failure);
  }

  private boolean lacks(int link, Failure failure) {
    return !wanted(link, failure).isEmpty()
        && found.fabric().mayJoin(link, found.vlan(), failure).isEmpty();
  }

  private boolean isFaulty(int link, Failure failure) {
    return lacks(link, failure)
        && (found.carriage().forwards(link, failure) != Truth.NO
            || found.fabric().isOpen(link, failure) != Truth.YES);
  }

  private List<Plug> plugFaults() {
    List<Plug> faulty = new ArrayList<>();
    for (int at = 0; at < found.members().size(); at++) {
      List<Plug> now = found.members().get(at).plugs();
      List<Plug> wanted = designed.members().get(at).plugs();
      for (int plug = 0; plug < now.size(); plug++) {
        if (now.get(plug).works() != wanted.get(plug).works()) {
          faulty.add(now.get(plug));
        }
      }
    }
    return faulty;
  }

  private List<Router> routerFaults(Failure failure) {
    List<Router> faulty = new ArrayList<>();
    for (int at = 0; at < found.routers().size(); at++) {
      Router router = found.routers().get(at);
      Router wanted = designed.routers().get(at);
      for (int plug = 0; plug < router.plugs().size(); plug++) {
        if (found.works(router.plugs().get(plug), failure)
            != designed.works(wanted.plugs().get(plug), failure)) {
          faulty.add(router);
        }
      }
    }
    return faulty;
  }
}
