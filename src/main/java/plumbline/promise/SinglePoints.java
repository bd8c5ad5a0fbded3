package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import plumbline.design.Host;
import plumbline.fabric.Carriage;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Finds the things on whose own failure hosts lose a VLAN although they are plugged in twice. */
final class SinglePoints {
  private final Promises promises;
  private final Predicate<Host.Pair> asked;
  private final Map<Boolean, Map<Failure, Map<VlanId, List<String>>>> found = new LinkedHashMap<>();

  private SinglePoints(Promises promises, Predicate<Host.Pair> asked) {
    this.promises = promises;
    this.asked = asked;
  }

  /**
   * All of them, each once, and once more where spanning tree is what takes the VLAN.
   *
   * @param asked the pairs of ports that are asked about
   */
  static List<SinglePoint> in(Promises promises, Predicate<Host.Pair> asked) {
    SinglePoints all = new SinglePoints(promises, asked);
    promises.vlans().forEach(all::ask);
    List<SinglePoint> points = new ArrayList<>();
    all.found.forEach(
        (takeover, failures) ->
            failures.forEach(
                (failure, hosts) -> points.add(new SinglePoint(failure, hosts, takeover))));
    return points;
  }

  private void ask(VlanId vlan) {
    VlanSide side = promises.side(vlan);
    List<Aim> aims = Promises.aims(side);
    for (Member member : side.members()) {
      if (member.kind() == Member.Kind.HOST && isPaired(member)) {
        for (Aim aim : aims) {
          ask(side, member, aim);
        }
      }
    }
  }

  /** Whether both ports of some pair of the host are to carry the VLAN. */
  private boolean isPaired(Member member) {
    Host host = promises.design().hosts().get(member.name());
    Set<String> ports = new LinkedHashSet<>();
    member.plugs().forEach(plug -> plug.name().ifPresent(ports::add));
    return host.pairs().stream()
        .filter(asked)
        .anyMatch(pair -> ports.contains(pair.first()) && ports.contains(pair.second()));
  }

  private void ask(VlanSide side, Member member, Aim aim) {
    if (side.holds(member, aim, VlanSide.NOTHING) != Truth.YES) {
      return;
    }
    Carriage plain = side.fabric().graph(side.vlan());
    for (Failure failure : side.suspects(member, aim)) {
      if (side.holds(member, aim, failure) == Truth.NO && isLeft(side, member, aim, failure)) {
        boolean takeover = new VlanSide(side, plain).holds(member, aim, failure) == Truth.YES;
        List<String> hosts =
            found
                .computeIfAbsent(takeover, any -> new LinkedHashMap<>())
                .computeIfAbsent(failure, any -> new TreeMap<>())
                .computeIfAbsent(side.vlan(), any -> new ArrayList<>());
        if (!hosts.contains(member.name())) {
          hosts.add(member.name());
        }
      }
    }
  }

  /** Whether what the host wants to reach is still there: a gateway's own failure is its own. */
  private static boolean isLeft(VlanSide side, Member member, Aim aim, Failure failure) {
    if (aim instanceof Aim.ToGateway) {
      return side.gateways(failure).stream()
          .anyMatch(plug -> side.works(plug, failure) == Truth.YES);
    }
    return aim instanceof Aim.Present
        || side.members().stream()
            .anyMatch(other -> !other.equals(member) && side.isThere(other, failure));
  }
}
