package plumbline.promise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import plumbline.fabric.Failure;
import plumbline.fabric.VlanGraph.Point;
import plumbline.port.PortName;
import plumbline.port.PortNames;
import plumbline.promise.RandomSite.Box;
import plumbline.promise.RandomSite.Cord;
import plumbline.promise.RandomSite.Guest;
import plumbline.promise.RandomSite.Jack;
import plumbline.promise.RandomSite.Tie;
import plumbline.vlan.VlanId;

/**
 * Answers for a random site by removing what failed and searching again. It shares no code with the
 * engine; faults are what it can take as repaired one by one.
 */
final class BruteForce {
  private final RandomSite site;
  private final Set<Fault> faults = new LinkedHashSet<>();

  /** A place where something meets a VLAN. */
  record Spot(Box box, boolean cable, PortName port, Fault fault) {}

  BruteForce(RandomSite site) {
    this.site = site;
    RandomSite.VLANS.forEach(this::faults);
  }

  /** All faults of the site. */
  Set<Fault> faults() {
    return faults;
  }

  private void faults(int number) {
    VlanId vlan = new VlanId(number);
    for (int tie = 0; tie < site.ties.size(); tie++) {
      Tie of = site.ties.get(tie);
      if (of.lacksOne().contains(number)
          || of.lacksOther().contains(number)
          || of.shut()
          || lacks(of.one(), number)
          || lacks(of.other(), number)) {
        faults.add(new Fault.OfLink(vlan, tie));
      }
      if (of.least() != of.leastFound() || of.cords().stream().anyMatch(cord -> !cord.up())) {
        faults.add(new Fault.OfBundle(vlan, tie));
      }
    }
    for (Guest guest : site.guests) {
      for (Jack jack : guest.vlans().contains(number) ? guest.jacks() : List.<Jack>of()) {
        if (jack.shut() || jack.lacks().contains(number) || lacks(jack.box().at(), number)) {
          faults.add(spot(jack, vlan).fault());
        }
      }
    }
    for (int at : number == 20 ? site.managed : Set.<Integer>of()) {
      if (lacks(at, number)) {
        faults.add(new Fault.OfSwitch(vlan, "s" + at));
      }
    }
    site.gateways.forEach(
        (at, vlans) -> {
          if (vlans.containsKey(number) && (!vlans.get(number) || lacks(at, number))) {
            faults.add(new Fault.OfRouter(vlan, "s" + at));
          }
        });
  }

  private boolean lacks(int at, int vlan) {
    return site.absent.get(at).contains(vlan);
  }

  static PortName port(String name) {
    return ((PortNames.Reading.Ports) PortNames.parse(name)).names().get(0);
  }

  private static Spot spot(Jack jack, VlanId vlan) {
    PortName port = port(jack.box().port(jack.number()));
    return new Spot(
        jack.box(), true, port, new Fault.OfPlug(vlan, new Point("s" + jack.box().at(), port)));
  }

  /** The members of a VLAN by name, in the order of the engine, and where they meet it. */
  Map<String, List<Spot>> members(VlanId vlan) {
    Map<String, List<Spot>> members = new LinkedHashMap<>();
    for (Guest guest : site.guests) {
      if (guest.vlans().contains(vlan.number())) {
        members.put(guest.name(), guest.jacks().stream().map(jack -> spot(jack, vlan)).toList());
      }
    }
    for (int at : vlan.number() == 20 ? site.managed : Set.<Integer>of()) {
      members.put(
          "the management address of s" + at, everywhere(at, new Fault.OfSwitch(vlan, "s" + at)));
    }
    return members;
  }

  private List<Spot> everywhere(int at, Fault fault) {
    List<Spot> spots = new ArrayList<>();
    for (int member = 1; member <= site.stacks.get(at); member++) {
      spots.add(new Spot(new Box(at, member), false, port("Gi1/0/1"), fault));
    }
    return spots;
  }

  private List<Spot> routers(VlanId vlan, Failure failure) {
    List<Spot> spots = new ArrayList<>();
    site.gateways.forEach(
        (at, vlans) -> {
          String name = "s" + at;
          if (vlans.containsKey(vlan.number()) && !failure.equals(new Failure.OfGateway(name))) {
            spots.addAll(everywhere(at, new Fault.OfRouter(vlan, name)));
          }
        });
    return spots;
  }

  boolean works(Spot spot, Failure failure, Set<Fault> broken) {
    boolean cut =
        spot.cable() && failure.equals(new Failure.OfPort("s" + spot.box().at(), spot.port()));
    return !cut && !isDown(spot.box(), failure) && !broken.contains(spot.fault());
  }

  /** Whether one of some places reaches what an aim asks for. */
  boolean holds(List<Spot> spots, VlanId vlan, Aim aim, Failure failure, Set<Fault> broken) {
    Set<Box> ends = new LinkedHashSet<>();
    if (aim instanceof Aim.ToGateway) {
      routers(vlan, failure).stream()
          .filter(spot -> works(spot, failure, broken))
          .forEach(spot -> ends.add(spot.box()));
    } else if (aim instanceof Aim.InDomain domain) {
      Box middle = box(domain.middle());
      if (isDown(middle, failure)) {
        domain.next().map(this::box).ifPresent(ends::add);
      } else {
        ends.add(middle);
      }
    }
    return spots.stream()
        .filter(spot -> works(spot, failure, broken))
        .anyMatch(
            spot ->
                aim instanceof Aim.Present
                    || reached(spot.box(), vlan, failure, broken).stream()
                        .anyMatch(ends::contains));
  }

  private Box box(Point point) {
    int at = Integer.parseInt(point.switchName().substring(1));
    return new Box(at, site.stacks.get(at) > 1 ? point.port().numbers().get(0) : 1);
  }

  private Set<Box> reached(Box from, VlanId vlan, Failure failure, Set<Fault> broken) {
    Set<Box> seen = new LinkedHashSet<>();
    List<Box> open = new ArrayList<>(List.of(from));
    while (!open.isEmpty()) {
      Box next = open.remove(open.size() - 1);
      if (isDown(next, failure) || !seen.add(next)) {
        continue;
      }
      if (site.stacks.get(next.at()) > 1) {
        open.add(new Box(next.at(), 3 - next.member()));
      }
      for (int tie = 0; tie < site.ties.size(); tie++) {
        for (Cord cord : alive(tie, vlan, failure, broken)) {
          if (cord.one().equals(next)) {
            open.add(cord.other());
          }
          if (cord.other().equals(next)) {
            open.add(cord.one());
          }
        }
      }
    }
    return seen;
  }

  private List<Cord> alive(int tie, VlanId vlan, Failure failure, Set<Fault> broken) {
    Tie of = site.ties.get(tie);
    boolean weak = broken.contains(new Fault.OfBundle(vlan, tie));
    if (broken.contains(new Fault.OfLink(vlan, tie)) || failure.equals(new Failure.OfLink(tie))) {
      return List.of();
    }
    List<Cord> alive = new ArrayList<>();
    for (int cord = 0; cord < of.cords().size(); cord++) {
      Cord one = of.cords().get(cord);
      if ((one.up() || !weak)
          && !failure.equals(new Failure.OfCable(tie, cord))
          && !isDown(one.one(), failure)
          && !isDown(one.other(), failure)) {
        alive.add(one);
      }
    }
    // the far end is as designed
    int least = weak ? Math.max(of.leastFound(), of.least()) : of.least();
    return alive.size() >= least ? alive : List.of();
  }

  private static boolean isDown(Box box, Failure failure) {
    return failure instanceof Failure.OfSwitch down
        && down.name().equals("s" + box.at())
        && (down.member().isEmpty() || down.member().equals(OptionalInt.of(box.member())));
  }

  /** The smallest sets of faults that take something, all in one. */
  Set<Fault> toBlame(List<Spot> spots, VlanId vlan, Aim aim, Failure failure) {
    List<Fault> all =
        faults.stream().filter(fault -> fault.vlan().equals(vlan)).collect(Collectors.toList());
    List<Integer> cuts = new ArrayList<>();
    for (int set = 0; set < 1 << all.size(); set++) {
      int here = set;
      boolean larger = cuts.stream().anyMatch(cut -> (cut & here) == cut);
      if (!larger && !holds(spots, vlan, aim, failure, pick(all, set))) {
        cuts.add(set);
      }
    }
    // numbers ascend, so a subset comes before its supersets
    Set<Fault> blamed = new LinkedHashSet<>();
    cuts.forEach(cut -> blamed.addAll(pick(all, cut)));
    return blamed;
  }

  private static Set<Fault> pick(List<Fault> all, int set) {
    Set<Fault> picked = new LinkedHashSet<>();
    for (int at = 0; at < all.size(); at++) {
      if ((set >> at & 1) == 1) {
        picked.add(all.get(at));
      }
    }
    return picked;
  }
}
