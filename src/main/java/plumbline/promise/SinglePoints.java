package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import plumbline.fabric.Carriage;
import plumbline.fabric.Failure;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Finds the things on whose own failure somebody loses a VLAN that others keep. */
final class SinglePoints {
  private final Promises promises;
  private final Carriage open;
  private final Map<List<Object>, Map<VlanId, List<String>>> found = new LinkedHashMap<>();

  private SinglePoints(Promises promises) {
    this.promises = promises;
    this.open = promises.openPaths();
  }

  /**
   * Something that is lost.
   *
   * @param failure what fails; for the cable of one of the member's plugs that plug's index
   * @param plug index of the plug that leads nowhere then; -1 where the member has lost all
   * @param takeover a link that leads on without the VLAN
   */
  private record Loss(Object failure, int plug, Optional<Integer> takeover) {}

  /** All of them, each once for every link that takes over without the VLAN. */
  static List<SinglePoint> in(Promises promises) {
    SinglePoints all = new SinglePoints(promises);
    promises.vlans().forEach(all::ask);
    List<SinglePoint> points = new ArrayList<>();
    all.found.forEach(
        (key, who) ->
            points.add(
                new SinglePoint(
                    (Failure) key.get(0),
                    ((Optional<?>) key.get(1)).map(Integer.class::cast),
                    who)));
    return points;
  }

  private void ask(VlanId vlan) {
    VlanSide side = promises.side(vlan);
    List<Aim> aims = Promises.aims(side);
    // whoever is plugged in at the same switches loses the same
    Map<List<Object>, List<Loss>> known = new HashMap<>();
    for (Member member : side.members()) {
      if (member.kind() == Member.Kind.HOST || member.kind() == Member.Kind.DEVICE) {
        for (Aim aim : aims) {
          List<Object> place = new ArrayList<>(List.of(aim));
          member.plugs().forEach(plug -> place.add(side.fabric().box(plug.point())));
          member.plugs().forEach(plug -> place.add(plug.works()));
          known
              .computeIfAbsent(place, any -> losses(side, member, aim))
              .forEach(loss -> add(member, loss));
        }
      }
    }
  }

  private void add(Member member, Loss loss) {
    String who =
        member.name()
            + (loss.plug() < 0
                ? ""
                : member.plugs().get(loss.plug()).name().map(name -> " " + name).orElse(""));
    List<String> all =
        found
            .computeIfAbsent(
                List.of(Cables.failure(member, loss.failure()), loss.takeover()),
                any -> new TreeMap<>())
            .computeIfAbsent(member.vlan(), any -> new ArrayList<>());
    if (!all.contains(who)) {
      all.add(who);
    }
  }

  private List<Loss> losses(VlanSide side, Member member, Aim aim) {
    List<Loss> losses = new ArrayList<>();
    // who reaches nothing by one of its ports now is told of by other rules
    boolean whole =
        member.plugs().stream()
            .filter(plug -> side.works(plug, VlanSide.NOTHING) == Truth.YES)
            .allMatch(plug -> side.holds(plug, aim, VlanSide.NOTHING) == Truth.YES);
    if (!whole || side.holds(member, aim, VlanSide.NOTHING) != Truth.YES) {
      return losses;
    }
    Set<Failure> all = new LinkedHashSet<>(side.suspects(member, aim));
    member.plugs().stream()
        .filter(plug -> side.holds(plug, aim, VlanSide.NOTHING) == Truth.YES)
        .forEach(plug -> side.suspects(all, plug, aim));
    for (Failure failure : all) {
      if (side.holds(member, aim, failure) == Truth.NO) {
        if (isLeft(side, member, aim, failure)) {
          losses.add(
              new Loss(
                  Cables.when(member, failure), -1, takeover(side, member.plugs(), aim, failure)));
        }
      } else {
        stranded(losses, side, member, aim, failure);
      }
    }
    return losses;
  }

  /** One port of several that leads nowhere is of interest where another path takes over. */
  private void stranded(List<Loss> losses, VlanSide side, Member member, Aim aim, Failure failure) {
    for (int plug = 0; plug < member.plugs().size() && member.plugs().size() > 1; plug++) {
      Plug here = member.plugs().get(plug);
      if (side.holds(here, aim, VlanSide.NOTHING) == Truth.YES
          && side.works(here, failure) == Truth.YES
          && side.holds(here, aim, failure) == Truth.NO) {
        Optional<Integer> takeover = takeover(side, List.of(here), aim, failure);
        if (takeover.isPresent()) {
          losses.add(new Loss(Cables.when(member, failure), plug, takeover));
        }
      }
    }
  }

  /** A link out of the cut-off part that still leads to what is to be reached. */
  private Optional<Integer> takeover(VlanSide side, List<Plug> plugs, Aim aim, Failure failure) {
    VlanSide others = new VlanSide(side, open);
    boolean leadsOn =
        plugs.stream().anyMatch(plug -> others.holds(plug, aim, failure) == Truth.YES);
    return leadsOn
        ? side.barriers(plugs.stream().map(Plug::point).toList(), failure).stream()
            .filter(link -> side.fabric().isOpen(link, failure) == Truth.YES)
            .findFirst()
        : Optional.empty();
  }

  /** Whether what is to be reached is still there: a gateway's own failure is its own. */
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
