package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import plumbline.design.Service;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;

/** A service in one network: which of its members work while something fails. */
public final class ServiceSide {
  private final Service service;
  private final List<Part> members = new ArrayList<>();

  /**
   * A member of the service.
   *
   * @param side its VLAN
   * @param member its host there
   * @param aim what it needs to reach
   */
  record Part(VlanSide side, Member member, Aim aim) {
    Truth holds(Failure failure) {
      return side.holds(member, aim, failure);
    }
  }

  ServiceSide(Promises promises, Service service) {
    this.service = service;
    for (Service.Member of : service.members()) {
      VlanSide side = promises.side(of.vlan().id());
      side.members().stream()
          .filter(one -> one.kind() == Member.Kind.HOST && one.name().equals(of.host()))
          .findFirst()
          .ifPresent(one -> members.add(new Part(side, one, Promises.aims(side).get(0))));
    }
  }

  private ServiceSide(Promises promises, ServiceSide like) {
    this.service = like.service;
    for (Part part : like.members) {
      VlanSide side = promises.side(part.side().vlan());
      Member member = side.members().get(part.side().members().indexOf(part.member()));
      members.add(new Part(side, member, part.aim()));
    }
  }

  /** The same service, with the same aims, in another state of its network. */
  ServiceSide in(Promises promises) {
    return new ServiceSide(promises, this);
  }

  /** The service. */
  public Service service() {
    return service;
  }

  List<Part> members() {
    return members;
  }

  /** The members, by host and VLAN, that do not work while something fails. */
  public List<Service.Member> lost(Failure failure) {
    List<Service.Member> lost = new ArrayList<>();
    for (int at = 0; at < members.size(); at++) {
      if (members.get(at).holds(failure) == Truth.NO) {
        lost.add(service.members().get(at));
      }
    }
    return lost;
  }

  /** Whether enough members work while something fails. */
  public Truth works(Failure failure) {
    int certain = 0;
    int possible = 0;
    for (Part part : members) {
      Truth holds = part.holds(failure);
      certain += holds == Truth.YES ? 1 : 0;
      possible += holds != Truth.NO ? 1 : 0;
    }
    if (certain >= service.needs()) {
      return Truth.YES;
    }
    return possible >= service.needs() ? Truth.UNKNOWN : Truth.NO;
  }

  /** The failures that may take a member and that the service is to survive. */
  public Set<Failure> suspects() {
    Set<Failure> found = new LinkedHashSet<>();
    for (Part part : members) {
      if (part.holds(VlanSide.NOTHING) == Truth.YES) {
        found.addAll(part.side().suspects(part.member(), part.aim()));
      }
      found.add(new Failure.OfHost(part.member().name()));
      found.add(new Failure.OfVlan(part.side().vlan()));
      part.side().routers().forEach(router -> found.add(new Failure.OfGateway(router.name())));
    }
    found.removeIf(failure -> !service.survives().contains(kind(failure)));
    return found;
  }

  private static Service.Failure kind(Failure failure) {
    if (failure instanceof Failure.OfSwitch) {
      return Service.Failure.SWITCH;
    }
    if (failure instanceof Failure.OfHost) {
      return Service.Failure.HOST;
    }
    if (failure instanceof Failure.OfVlan) {
      return Service.Failure.VLAN;
    }
    return failure instanceof Failure.OfGateway ? Service.Failure.GATEWAY : Service.Failure.LINK;
  }
}
