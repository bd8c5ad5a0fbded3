package plumbline.promise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.fabric.Failure;
import plumbline.finding.Affected.Loss;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * Works out what the differences between a network as it stands and as designed take away, now or
 * at the next single failure.
 */
public final class Effects {
  private final Promises found;
  private final Promises designed;
  private final List<Effect> effects = new ArrayList<>();

  private Effects(Sides sides) {
    this.found = Promises.in(sides.supposed());
    this.designed = Promises.in(sides.designed());
  }

  /** Everything that is taken away, by VLAN and member in design order, services last. */
  public static List<Effect> of(Sides sides) {
    Effects all = new Effects(sides);
    Map<VlanId, Blame> blames = new HashMap<>();
    for (VlanId vlan : all.found.vlans()) {
      VlanSide now = all.found.side(vlan);
      VlanSide wanted = all.designed.side(vlan);
      Blame blame = new Blame(now, wanted);
      if (blame.isWanted()) {
        blames.put(vlan, blame);
        new OfVlan(now, wanted, blame, all.effects).ask();
      }
    }
    if (!blames.isEmpty()) {
      all.effects.addAll(ServiceEffects.of(all.found, all.designed, blames));
    }
    return all.effects;
  }

  /** What is taken in one VLAN. */
  private static final class OfVlan {
    private final VlanSide now;
    private final VlanSide wanted;
    private final Blame blame;
    private final List<Effect> effects;

    /** What is taken from members that are plugged in at the same places, without a fault there. */
    private final Map<List<Object>, List<Taken>> known = new HashMap<>();

    /**
     * Something that is taken.
     *
     * @param aim what cannot be reached
     * @param plug index of the plug that it is about; -1 for all
     * @param when the failure; for the cable of one of the member's own plugs that plug's index
     * @param faults the faults to blame
     */
    private record Taken(Aim aim, int plug, Optional<Object> when, Set<Fault> faults) {}

    OfVlan(VlanSide now, VlanSide wanted, Blame blame, List<Effect> effects) {
      this.now = now;
      this.wanted = wanted;
      this.blame = blame;
      this.effects = effects;
    }

    void ask() {
      List<Aim> aims = Promises.aims(now);
      for (int index = 0; index < now.members().size(); index++) {
        Member member = now.members().get(index);
        int at = index;
        List<Aim> own = decided(Promises.aims(member, aims), at);
        List<Taken> taken =
            isWhole(at)
                ? known.computeIfAbsent(place(member, own), any -> taken(at, own))
                : taken(at, own);
        taken.forEach(one -> effects.add(effect(member, one)));
      }
      if (now.members().isEmpty()) {
        gateways();
      }
    }

    /**
     * Where the design leaves open what a member reaches, the VLAN itself is promised all the same.
     */
    private List<Aim> decided(List<Aim> aims, int index) {
      Member whole = wanted.members().get(index);
      return aims.stream()
          .map(
              aim ->
                  wanted.holds(whole, aim, VlanSide.NOTHING) == Truth.UNKNOWN
                      ? new Aim.Present()
                      : aim)
          .distinct()
          .toList();
    }

    /** A VLAN whose hosts the design does not name lacks its gateways all the same. */
    private void gateways() {
      boolean gone =
          now.gateways(VlanSide.NOTHING).stream().allMatch(plug -> plug.works() == Truth.NO);
      if (gone) {
        effects.add(
            new Effect(
                Loss.GATEWAY,
                "every host",
                Optional.of(now.vlan()),
                Optional.empty(),
                now.routers().stream()
                    .<Fault>map(router -> new Fault.OfRouter(now.vlan(), router.name()))
                    .collect(Collectors.toSet())));
      }
    }

    /** Whether no plug of a member has a fault of its own. */
    private boolean isWhole(int index) {
      List<Plug> plugs = new ArrayList<>(now.members().get(index).plugs());
      plugs.addAll(wanted.members().get(index).plugs());
      return plugs.stream().allMatch(plug -> plug.works() == Truth.YES);
    }

    private List<Object> place(Member member, List<Aim> aims) {
      List<Object> place = new ArrayList<>(aims);
      member.plugs().forEach(plug -> place.add(now.fabric().box(plug.point())));
      return place;
    }

    private Effect effect(Member member, Taken taken) {
      Optional<String> port =
          taken.plug() < 0 ? Optional.empty() : member.plugs().get(taken.plug()).name();
      return new Effect(
          loss(member, taken),
          member.name() + port.map(name -> " " + name).orElse(""),
          Optional.of(member.vlan()),
          taken.when().map(when -> Cables.failure(member, when)),
          taken.faults());
    }

    private Loss loss(Member member, Taken taken) {
      if (taken.plug() >= 0) {
        return taken.aim() instanceof Aim.InDomain ? Loss.PORT_DOMAIN : Loss.PORT_GATEWAY;
      }
      Failure failure =
          taken.when().map(when -> Cables.failure(member, when)).orElse(VlanSide.NOTHING);
      if (taken.aim() instanceof Aim.Present || !now.isThere(member, failure)) {
        return Loss.VLAN;
      }
      return taken.aim() instanceof Aim.InDomain ? Loss.DOMAIN : Loss.GATEWAY;
    }

    private List<Taken> taken(int index, List<Aim> aims) {
      Member member = now.members().get(index);
      Member whole = wanted.members().get(index);
      List<Taken> taken = new ArrayList<>();
      for (Aim aim : aims) {
        // who has lost the gateway has lost the rest of the domain with it
        List<Taken> wider = List.copyOf(taken);
        Truth held = now.holds(member, aim, VlanSide.NOTHING);
        if (held == Truth.NO && wanted.holds(whole, aim, VlanSide.NOTHING) == Truth.YES) {
          taken.add(new Taken(aim, -1, Optional.empty(), blame.of(member, aim, VlanSide.NOTHING)));
        }
        if (held == Truth.YES) {
          ports(taken, member, whole, aim);
          failures(taken, member, whole, aim);
        }
        taken.removeIf(
            one ->
                wider.stream()
                    .anyMatch(
                        other ->
                            one.aim() != other.aim()
                                && one.plug() == other.plug()
                                && one.when().equals(other.when())
                                && !wider.contains(one)));
      }
      return taken;
    }

    /** Ports of a host that pass the VLAN into a part of it where nothing of use is. */
    private void ports(List<Taken> taken, Member member, Member whole, Aim aim) {
      for (int plug = 0; plug < member.plugs().size() && member.plugs().size() > 1; plug++) {
        if (isStranded(member, whole, plug, aim, VlanSide.NOTHING)) {
          taken.add(
              new Taken(
                  aim,
                  plug,
                  Optional.empty(),
                  blame.of(member.plugs().get(plug), aim, VlanSide.NOTHING)));
        }
      }
    }

    private boolean isStranded(Member member, Member whole, int plug, Aim aim, Failure failure) {
      Plug here = member.plugs().get(plug);
      return now.works(here, failure) == Truth.YES
          && now.holds(here, aim, failure) == Truth.NO
          && wanted.holds(whole.plugs().get(plug), aim, failure) == Truth.YES;
    }

    private void failures(List<Taken> taken, Member member, Member whole, Aim aim) {
      for (Failure failure : now.suspects(member, aim)) {
        if (now.holds(member, aim, failure) == Truth.NO
            && wanted.holds(whole, aim, failure) == Truth.YES) {
          taken.add(
              new Taken(
                  aim,
                  -1,
                  Optional.of(Cables.when(member, failure)),
                  blame.of(member, aim, failure)));
        }
      }
      for (int plug = 0; plug < member.plugs().size() && member.plugs().size() > 1; plug++) {
        if (now.holds(member.plugs().get(plug), aim, VlanSide.NOTHING) != Truth.YES) {
          continue;
        }
        Set<Failure> suspects = new LinkedHashSet<>();
        now.suspects(suspects, member.plugs().get(plug), aim);
        for (Failure failure : suspects) {
          if (isStranded(member, whole, plug, aim, failure)
              && now.holds(member, aim, failure) == Truth.YES) {
            taken.add(
                new Taken(
                    aim,
                    plug,
                    Optional.of(Cables.when(member, failure)),
                    blame.of(member.plugs().get(plug), aim, failure)));
          }
        }
      }
    }
  }
}
