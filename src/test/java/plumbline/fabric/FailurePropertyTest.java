package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** On random fabrics every failure is answered as if the thing were removed and searched again. */
class FailurePropertyTest {
  private static final VlanId SHOP = new VlanId(10);

  /** A box: a switch and its member in the stack. */
  private record Box(int at, int member) {}

  /** A cable between two boxes, by the port number on each. */
  private record Cord(Box one, int port, Box other, int otherPort) {}

  private record Tie(
      int one, int other, boolean bundle, int least, boolean carries, List<Cord> cords) {}

  /** A random site: stacks, links, bundles with a least number of cables. */
  private static final class Site {
    final List<Integer> stacks;
    final List<Tie> ties = new ArrayList<>();
    final int[] ports;

    Site(long seed) {
      Random random = new Random(seed);
      int count = 2 + random.nextInt(4);
      stacks = IntStream.range(0, count).mapToObj(any -> 1 + random.nextInt(3)).toList();
      ports = new int[count];
      int number = random.nextInt(2 * count);
      for (int tie = 0; tie < number; tie++) {
        int one = random.nextInt(count);
        int other = (one + 1 + random.nextInt(count - 1)) % count;
        boolean bundle = random.nextInt(3) > 0;
        List<Cord> cords = new ArrayList<>();
        for (int cord = bundle ? 1 + random.nextInt(3) : 1; cord > 0; cord--) {
          cords.add(new Cord(box(one, random), ++ports[one], box(other, random), ++ports[other]));
        }
        ties.add(new Tie(one, other, bundle, 1 + random.nextInt(2), random.nextInt(4) > 0, cords));
      }
    }

    private Box box(int at, Random random) {
      return new Box(at, 1 + random.nextInt(stacks.get(at)));
    }

    String design() {
      StringBuilder text =
          new StringBuilder("format: plumbline-design/1\nvlans: {shop: {id: 10}}\n");
      text.append("roles: {up: {mode: trunk}}\nswitches:\n");
      for (int at = 0; at < stacks.size(); at++) {
        String members =
            IntStream.rangeClosed(1, stacks.get(at))
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(", "));
        text.append("  s").append(at);
        text.append(stacks.get(at) > 1 ? ": {stack: [" + members + "]}\n" : ": {}\n");
      }
      text.append(ties.isEmpty() ? "" : "links:\n");
      for (int tie = 0; tie < ties.size(); tie++) {
        Tie of = ties.get(tie);
        List<String> cords =
            of.cords().stream()
                .map(
                    cord ->
                        "["
                            + port(cord.one(), cord.port())
                            + ", "
                            + port(cord.other(), cord.otherPort())
                            + "]")
                .toList();
        text.append(
            of.bundle()
                ? "  - {ends: [s%d Po%d, s%d Po%d], role: up, members: %s}%n"
                    .formatted(of.one(), tie + 1, of.other(), tie + 1, cords)
                : "  - {ends: [s%d %s, s%d %s], role: up}%n"
                    .formatted(
                        of.one(),
                        port(of.cords().get(0).one(), of.cords().get(0).port()),
                        of.other(),
                        port(of.cords().get(0).other(), of.cords().get(0).otherPort())));
      }
      return text.toString();
    }

    private static String port(Box box, int number) {
      return "Gi" + box.member() + "/0/" + number;
    }

    Map<String, String> configs() {
      Map<String, String> configs = new TreeMap<>();
      for (int at = 0; at < stacks.size(); at++) {
        StringBuilder text = new StringBuilder("vlan 10\n!\n");
        for (int tie = 0; tie < ties.size(); tie++) {
          Tie of = ties.get(tie);
          if (of.one() != at && of.other() != at) {
            continue;
          }
          String trunk =
              " switchport mode trunk\n switchport trunk allowed vlan "
                  + (of.carries() || of.other() == at ? "1,10" : "1")
                  + "\n";
          if (of.bundle()) {
            text.append("interface Po").append(tie + 1).append('\n').append(trunk);
            text.append(of.one() == at ? " port-channel min-links " + of.least() + "\n" : "");
            text.append("!\n");
          }
          for (Cord cord : of.cords()) {
            text.append("interface ")
                .append(
                    of.one() == at
                        ? port(cord.one(), cord.port())
                        : port(cord.other(), cord.otherPort()))
                .append('\n');
            text.append(of.bundle() ? " channel-group " + (tie + 1) + " mode active\n" : trunk);
            text.append("!\n");
          }
        }
        configs.put("s" + at, text.toString());
      }
      return configs;
    }

    /** Searches again from a box, without what failed. */
    Set<Box> reached(Box from, Failure failure) {
      Set<Box> seen = new HashSet<>();
      List<Box> open = new ArrayList<>(List.of(from));
      while (!open.isEmpty()) {
        Box next = open.remove(open.size() - 1);
        if (isDown(next, failure) || !seen.add(next)) {
          continue;
        }
        int size = stacks.get(next.at());
        // a ring: one member less leaves the others joined
        for (int member = 1; member <= size; member++) {
          int apart = Math.abs(member - next.member());
          if (apart == 1 || apart == size - 1) {
            open.add(new Box(next.at(), member));
          }
        }
        for (int tie = 0; tie < ties.size(); tie++) {
          for (Cord cord : alive(tie, failure)) {
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

    private List<Cord> alive(int tie, Failure failure) {
      Tie of = ties.get(tie);
      if (!of.carries() || failure.equals(new Failure.OfLink(tie))) {
        return List.of();
      }
      List<Cord> alive = new ArrayList<>();
      for (int cord = 0; cord < of.cords().size(); cord++) {
        Cord one = of.cords().get(cord);
        if (!failure.equals(new Failure.OfCable(tie, cord))
            && !isDown(one.one(), failure)
            && !isDown(one.other(), failure)) {
          alive.add(one);
        }
      }
      return alive.size() >= (of.bundle() ? of.least() : 1) ? alive : List.of();
    }

    private boolean isDown(Box box, Failure failure) {
      return failure instanceof Failure.OfSwitch down
          && down.name().equals("s" + box.at())
          && (down.member().isEmpty() || down.member().equals(OptionalInt.of(box.member())));
    }

    List<Box> boxes() {
      return IntStream.range(0, stacks.size())
          .boxed()
          .flatMap(
              at ->
                  IntStream.rangeClosed(1, stacks.get(at)).mapToObj(member -> new Box(at, member)))
          .toList();
    }
  }

  @Property(tries = 150)
  void every_failure_is_answered_as_by_searching_again(@ForAll long seed) {
    Site site = new Site(seed);
    Fabric fabric = Sites.fabric(site.design(), site.configs());
    VlanGraph graph = fabric.graph(SHOP);
    List<Failure> failures = new ArrayList<>(fabric.failures());
    failures.add(new Failure.None());
    for (Failure failure : failures) {
      for (Box from : site.boxes()) {
        Set<Box> reached = site.reached(from, failure);
        for (Box to : site.boxes()) {
          assertThat(graph.joins(point(from), point(to), failure))
              .as("%s %s %s %s", failure, from, to, site.design())
              .isEqualTo(Truth.of(reached.contains(to)));
        }
      }
    }
  }

  /** Two hosts with two attachments each, some of which carry the VLAN only perhaps. */
  @Property(tries = 100)
  void what_takes_a_promise_away_is_found_without_trying_every_failure(@ForAll long seed) {
    Site site = new Site(seed);
    Fabric fabric = Sites.fabric(site.design(), site.configs());
    Random random = new Random(~seed);
    for (int turn = 0; turn < 10; turn++) {
      Reach reach =
          new Reach(fabric.graph(SHOP), attachments(site, random), attachments(site, random));
      Truth now = reach.holds(new Failure.None());
      Map<Failure, Truth> all = new LinkedHashMap<>();
      for (Failure failure : fabric.failures()) {
        Truth then = reach.holds(failure);
        if (now != Truth.NO && then != now) {
          all.put(failure, then);
        }
      }
      assertThat(reach.cuts()).containsExactlyInAnyOrderEntriesOf(all);
    }
  }

  private static List<Attachment> attachments(Site site, Random random) {
    List<Box> boxes = site.boxes();
    return random
        .ints(2, 0, boxes.size())
        .mapToObj(
            at ->
                new Attachment(
                    point(boxes.get(at)),
                    List.of(Truth.YES, Truth.NO, Truth.UNKNOWN).get(random.nextInt(3))))
        .toList();
  }

  private static VlanGraph.Point point(Box box) {
    return Sites.at("s" + box.at(), "Gi" + box.member() + "/0/48");
  }
}
