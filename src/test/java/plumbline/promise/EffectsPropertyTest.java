package plumbline.promise;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import plumbline.fabric.Failure;
import plumbline.finding.Affected.Loss;
import plumbline.promise.BruteForce.Spot;
import plumbline.vlan.VlanId;

/** On random sites what differences take, and which of them do, is what searching again finds. */
class EffectsPropertyTest {
  private static final int MOST_SWITCHES = 12;

  /** The most faults in one VLAN of which all sets are tried. */
  private static final int MOST_FAULTS = 8;

  /** What is taken: from whom, in which VLAN, by which failure. */
  private record Taken(Loss loss, String who, VlanId vlan, Optional<Failure> when) {}

  @Property(tries = 150)
  void what_is_taken_is_what_searching_again_finds(@ForAll long seed) {
    RandomSite site = new RandomSite(seed, MOST_SWITCHES, 4);
    Sides sides = Networks.sides(site.design(), site.configs());
    Set<Taken> found = new LinkedHashSet<>();
    for (Effect effect : Effects.of(sides)) {
      if (isOfMember(effect)) {
        found.add(new Taken(effect.loss(), effect.who(), effect.vlan().get(), effect.when()));
      }
    }
    assertThat(found)
        .as(() -> site.design() + site.configs())
        .containsExactlyInAnyOrderElementsOf(expected(site, sides).keySet());
  }

  @Property(tries = 300)
  void who_is_to_blame_is_in_some_smallest_set_of_faults(@ForAll long seed) {
    RandomSite site = new RandomSite(seed, 6, 6);
    BruteForce brute = new BruteForce(site);
    if (RandomSite.VLANS.stream()
        .anyMatch(
            vlan ->
                brute.faults().stream().filter(one -> one.vlan().number() == vlan).count()
                    > MOST_FAULTS)) {
      return;
    }
    Sides sides = Networks.sides(site.design(), site.configs());
    Map<Taken, Set<Fault>> expected = expected(site, sides);
    for (Effect effect : Effects.of(sides)) {
      if (isOfMember(effect)) {
        Taken taken = new Taken(effect.loss(), effect.who(), effect.vlan().get(), effect.when());
        assertThat(places(effect.faults()))
            .as(() -> taken + "\n" + site.design() + site.configs())
            .isEqualTo(places(expected.get(taken)));
      }
    }
  }

  @Property(tries = 150)
  void services_stop_when_searching_again_finds_too_few_members(@ForAll long seed) {
    RandomSite site = new RandomSite(seed, MOST_SWITCHES, 6);
    BruteForce brute = new BruteForce(site);
    Sides sides = Networks.sides(site.design(), site.configs());
    Promises found = Promises.in(sides.supposed());
    Set<Optional<Failure>> expected = new LinkedHashSet<>();
    for (RandomSite.Service service : site.services) {
      boolean now = works(site, brute, found, service, new Failure.None(), brute.faults());
      for (Failure failure : everything(site, sides)) {
        if (now == !failure.equals(new Failure.None())
            && !works(site, brute, found, service, failure, brute.faults())
            && works(site, brute, found, service, failure, Set.of())) {
          expected.add(Optional.of(failure).filter(one -> !(one instanceof Failure.None)));
        }
      }
    }
    Set<Optional<Failure>> stops = new LinkedHashSet<>();
    for (Effect effect : Effects.of(sides)) {
      if (effect.loss() == Loss.SERVICE) {
        stops.add(effect.when());
        assertThat(effect.faults()).isNotEmpty();
      }
    }
    assertThat(stops)
        .as(() -> site.design() + site.configs())
        .containsExactlyInAnyOrderElementsOf(expected);
  }

  private static boolean works(
      RandomSite site,
      BruteForce brute,
      Promises found,
      RandomSite.Service service,
      Failure failure,
      Set<Fault> broken) {
    int holding = 0;
    for (int[] member : service.members()) {
      VlanId vlan = new VlanId(member[1]);
      String host = site.guests.get(member[0]).name();
      Aim aim = Promises.aims(found.side(vlan)).get(0);
      boolean gone =
          failure.equals(new Failure.OfHost(host)) || failure.equals(new Failure.OfVlan(vlan));
      holding +=
          !gone && brute.holds(brute.members(vlan).get(host), vlan, aim, failure, broken) ? 1 : 0;
    }
    return holding >= service.needs();
  }

  private static List<Failure> everything(RandomSite site, Sides sides) {
    List<Failure> all = new ArrayList<>(List.of(new Failure.None()));
    all.addAll(sides.supposed().failures());
    for (RandomSite.Guest guest : site.guests) {
      all.add(new Failure.OfHost(guest.name()));
      guest.jacks().stream()
          .map(
              jack ->
                  new Failure.OfPort(
                      "s" + jack.box().at(), BruteForce.port(jack.box().port(jack.number()))))
          .forEach(all::add);
    }
    RandomSite.VLANS.forEach(vlan -> all.add(new Failure.OfVlan(new VlanId(vlan))));
    site.gateways.keySet().forEach(at -> all.add(new Failure.OfGateway("s" + at)));
    return all;
  }

  /** A bundle without cables carries nothing: its ends are among the places of its cables. */
  private static Set<Fault> places(Set<Fault> faults) {
    Set<Fault> places = new LinkedHashSet<>(faults);
    places.removeIf(
        fault ->
            fault instanceof Fault.OfLink one
                && faults.contains(new Fault.OfBundle(one.vlan(), one.link())));
    return places;
  }

  /** A VLAN that nobody is in has gateways all the same. */
  private static boolean isOfMember(Effect effect) {
    return effect.loss() != Loss.SERVICE && !effect.who().equals("every host");
  }

  /** All that is taken, with the faults to blame; of two aims at once the first counts. */
  private static Map<Taken, Set<Fault>> expected(RandomSite site, Sides sides) {
    BruteForce brute = new BruteForce(site);
    Promises found = Promises.in(sides.supposed());
    Map<Taken, Set<Fault>> expected = new LinkedHashMap<>();
    for (VlanId vlan : found.vlans()) {
      List<Aim> aims = Promises.aims(found.side(vlan));
      brute
          .members(vlan)
          .forEach(
              (name, spots) -> new OfMember(brute, sides, name, spots, vlan, expected).ask(aims));
    }
    return expected;
  }

  private record OfMember(
      BruteForce brute,
      Sides sides,
      String name,
      List<Spot> spots,
      VlanId vlan,
      Map<Taken, Set<Fault>> expected) {

    void ask(List<Aim> aims) {
      Set<List<Object>> before = new LinkedHashSet<>();
      for (Aim aim : aims) {
        Set<List<Object>> here = new LinkedHashSet<>();
        for (Failure failure : failures()) {
          Optional<Failure> when =
              failure instanceof Failure.None ? Optional.empty() : Optional.of(failure);
          ask(aim, failure, when, before, here);
        }
        before.addAll(here);
      }
    }

    private void ask(
        Aim aim,
        Failure failure,
        Optional<Failure> when,
        Set<List<Object>> before,
        Set<List<Object>> here) {
      Failure none = new Failure.None();
      boolean now = now(spots, aim, none);
      boolean then = now(spots, aim, failure);
      if ((now || when.isEmpty()) && !then && designed(spots, aim, failure)) {
        List<Object> key = List.of(-1, failure);
        here.add(key);
        if (!before.contains(key)) {
          boolean there =
              spots.stream().anyMatch(spot -> brute.works(spot, failure, brute.faults()));
          Loss loss =
              aim instanceof Aim.Present || !there
                  ? Loss.VLAN
                  : aim instanceof Aim.InDomain ? Loss.DOMAIN : Loss.GATEWAY;
          put(new Taken(loss, name, vlan, when), spots, aim, failure);
        }
      }
      for (int at = 0; at < spots.size() && spots.size() > 1; at++) {
        List<Spot> one = List.of(spots.get(at));
        boolean strandedNow = isStranded(one, aim, none);
        boolean stranded = isStranded(one, aim, failure);
        boolean counts = when.isEmpty() ? now : now(one, aim, none) && then && !strandedNow;
        if (counts && stranded) {
          List<Object> key = List.of(at, failure);
          here.add(key);
          if (!before.contains(key)) {
            Loss loss = aim instanceof Aim.InDomain ? Loss.PORT_DOMAIN : Loss.PORT_GATEWAY;
            // what lives on a switch has no ports of its own
            String port = spots.get(at).cable() ? " nic" + at : "";
            put(new Taken(loss, name + port, vlan, when), one, aim, failure);
          }
        }
      }
    }

    private void put(Taken taken, List<Spot> some, Aim aim, Failure failure) {
      boolean few =
          brute.faults().stream().filter(one -> one.vlan().equals(vlan)).count() <= MOST_FAULTS;
      expected.put(taken, few ? brute.toBlame(some, vlan, aim, failure) : Set.of());
    }

    private boolean now(List<Spot> some, Aim aim, Failure failure) {
      return brute.holds(some, vlan, aim, failure, brute.faults());
    }

    private boolean designed(List<Spot> some, Aim aim, Failure failure) {
      return brute.holds(some, vlan, aim, failure, Set.of());
    }

    private boolean isStranded(List<Spot> one, Aim aim, Failure failure) {
      return brute.works(one.get(0), failure, brute.faults())
          && !now(one, aim, failure)
          && designed(one, aim, failure);
    }

    private List<Failure> failures() {
      List<Failure> all = new ArrayList<>(List.of(new Failure.None()));
      all.addAll(sides.supposed().failures());
      spots.stream()
          .filter(Spot::cable)
          .forEach(spot -> all.add(new Failure.OfPort("s" + spot.box().at(), spot.port())));
      sides
          .supposed()
          .design()
          .gateways()
          .keySet()
          .forEach(gateway -> all.add(new Failure.OfGateway(gateway)));
      return all;
    }
  }
}
