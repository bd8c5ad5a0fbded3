package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
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
import plumbline.fabric.Segment.End;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * Where frames of a VLAN go on random networks, held against a tree of exchanged messages and a
 * search over the links on which it forwards.
 */
class CarriagePropertyTest {
  private static final VlanId SHOP = new VlanId(10);
  private static final int MOST_SWITCHES = 12;

  /** One end of a link: its switch, the number of its port, what it costs, what it lacks. */
  private record Tip(int at, int port, int cost, int priority, boolean carries) {}

  private record Tie(Tip one, Tip other) {
    boolean carries() {
      return one.carries() && other.carries();
    }
  }

  /** Modes of spanning tree and how their lines begin. */
  private enum Mode {
    MST("mst", "spanning-tree mst 0"),
    RSTP("rstp", "spanning-tree"),
    RAPID_PVST("rapid-pvst", "spanning-tree vlan 1-4094");

    private final String word;
    private final String lines;

    Mode(String word, String lines) {
      this.word = word;
      this.lines = lines;
    }
  }

  private static final class Network {
    final Mode mode;
    final List<BridgeId> ids;
    final List<Tie> ties = new ArrayList<>();
    private final int[] ports;

    Network(long seed, Mode mode) {
      this.mode = mode;
      Random random = new Random(seed);
      int count = 2 + random.nextInt(MOST_SWITCHES - 1);
      List<Integer> addresses =
          IntStream.range(1, count + 1).boxed().collect(Collectors.toCollection(ArrayList::new));
      java.util.Collections.shuffle(addresses, random);
      ids =
          addresses.stream()
              .map(address -> BridgeId.of(4096 * random.nextInt(3), address))
              .toList();
      ports = new int[count];
      for (int tie = count - 1 + random.nextInt(count); tie > 0; tie--) {
        int one = random.nextInt(count);
        int other = (one + 1 + random.nextInt(count - 1)) % count;
        ties.add(new Tie(tip(one, random), tip(other, random)));
      }
    }

    private Network(Network of, List<Tie> ties) {
      this.mode = of.mode;
      this.ids = of.ids;
      this.ports = of.ports;
      this.ties.addAll(ties);
    }

    private Tip tip(int at, Random random) {
      return new Tip(
          at, ++ports[at], 1 + random.nextInt(3), 16 * random.nextInt(3), random.nextInt(5) > 0);
    }

    /** The same where one link carries the VLAN at both ends. */
    Network carrying(int tie) {
      List<Tie> more = new ArrayList<>(ties);
      Tip one = ties.get(tie).one();
      Tip other = ties.get(tie).other();
      more.set(
          tie,
          new Tie(
              new Tip(one.at(), one.port(), one.cost(), one.priority(), true),
              new Tip(other.at(), other.port(), other.cost(), other.priority(), true)));
      return new Network(this, more);
    }

    /** The same without its last link. */
    Network without() {
      return new Network(this, ties.subList(0, ties.size() - 1));
    }

    String design() {
      StringBuilder text =
          new StringBuilder("format: plumbline-design/1\nvlans: {shop: {id: 10}}\n");
      text.append("roles: {up: {mode: trunk}}\nswitches:\n");
      for (int at = 0; at < ids.size(); at++) {
        text.append(
            "  s%d: {spanning-tree: {bridge-address: \"00:00:5e:00:53:%02x\"}}%n"
                .formatted(at, ids.get(at).address().getAsLong()));
      }
      text.append(ties.isEmpty() ? "" : "links:\n");
      for (Tie tie : ties) {
        text.append("  - {ends: [")
            .append(name(tie.one()))
            .append(", ")
            .append(name(tie.other()))
            .append("], role: up}\n");
      }
      return text.toString();
    }

    private static String name(Tip tip) {
      return "s" + tip.at() + " Gi1/0/" + tip.port();
    }

    Map<String, String> configs() {
      Map<String, String> configs = new TreeMap<>();
      for (int at = 0; at < ids.size(); at++) {
        StringBuilder text = new StringBuilder("spanning-tree mode " + mode.word + "\n");
        text.append(mode.lines).append(" priority ").append(ids.get(at).priority());
        text.append("\nvlan 10\n!\n");
        for (Tie tie : ties) {
          for (Tip tip : List.of(tie.one(), tie.other())) {
            if (tip.at() == at) {
              text.append("interface Gi1/0/").append(tip.port());
              text.append("\n switchport mode trunk\n switchport trunk allowed vlan ");
              text.append(tip.carries() ? "1,10" : "1");
              text.append("\n ").append(mode.lines).append(" cost ").append(tip.cost());
              text.append("\n ").append(mode.lines).append(" port-priority ");
              text.append(tip.priority()).append("\n!\n");
            }
          }
        }
        configs.put("s" + at, text.toString());
      }
      return configs;
    }

    Fabric fabric() {
      return Sites.fabric(design(), configs());
    }

    /** The switches that frames of the VLAN reach over links on which the tree forwards. */
    Set<Integer> reached(int from, Failure failure) {
      List<Tie> alive = alive(failure);
      List<List<PortRole>> roles = Bridges.run(ids, alive.stream().map(Network::segment).toList());
      Set<Integer> seen = new LinkedHashSet<>();
      List<Integer> open = new ArrayList<>(List.of(from));
      while (!open.isEmpty()) {
        int next = open.remove(open.size() - 1);
        if (isDown(next, failure) || !seen.add(next)) {
          continue;
        }
        for (int tie = 0; tie < alive.size(); tie++) {
          Tie of = alive.get(tie);
          boolean passes =
              of.carries()
                  && roles.get(tie).stream()
                      .allMatch(role -> role == PortRole.ROOT || role == PortRole.DESIGNATED);
          if (passes && of.one().at() == next) {
            open.add(of.other().at());
          }
          if (passes && of.other().at() == next) {
            open.add(of.one().at());
          }
        }
      }
      return seen;
    }

    private List<Tie> alive(Failure failure) {
      List<Tie> alive = new ArrayList<>();
      for (int tie = 0; tie < ties.size(); tie++) {
        Tie of = ties.get(tie);
        boolean spans = mode != Mode.RAPID_PVST || of.carries();
        if (spans
            && !failure.equals(new Failure.OfLink(tie))
            && !isDown(of.one().at(), failure)
            && !isDown(of.other().at(), failure)) {
          alive.add(of);
        }
      }
      return alive;
    }

    private static Segment segment(Tie tie) {
      return new Segment(List.of(end(tie.one()), end(tie.other())));
    }

    private static End end(Tip tip) {
      return new End(tip.at(), new PortId(tip.priority(), tip.port()), tip.cost());
    }

    private static boolean isDown(int at, Failure failure) {
      return failure.equals(new Failure.OfSwitch("s" + at, OptionalInt.empty()));
    }
  }

  @Property(tries = 60)
  void frames_go_where_the_one_tree_over_all_links_forwards(
      @ForAll long seed, @ForAll boolean multiple) {
    check(new Network(seed, multiple ? Mode.MST : Mode.RSTP));
  }

  @Property(tries = 60)
  void frames_go_where_the_tree_of_their_own_vlan_forwards(@ForAll long seed) {
    check(new Network(seed, Mode.RAPID_PVST));
  }

  private static void check(Network network) {
    Fabric fabric = network.fabric();
    Carriage carriage = fabric.carriage(SHOP);
    List<Failure> failures = new ArrayList<>(fabric.failures());
    failures.add(new Failure.None());
    for (Failure failure : failures) {
      for (int from = 0; from < network.ids.size(); from++) {
        Set<Integer> reached = network.reached(from, failure);
        for (int to = 0; to < network.ids.size(); to++) {
          assertThat(carriage.joins(point(from), point(to), failure))
              .as("%s s%s s%s %s %s", failure, from, to, network.design(), network.configs())
              .isEqualTo(Truth.of(reached.contains(to)));
        }
      }
    }
  }

  private static VlanGraph.Point point(int at) {
    return Sites.at("s" + at, "Gi1/0/48");
  }

  @Property(tries = 60)
  void more_links_and_more_vlans_on_them_part_nobody_where_trees_run_per_vlan(@ForAll long seed) {
    Network network = new Network(seed, Mode.RAPID_PVST);
    Random random = new Random(~seed);
    assertThat(joined(network.carrying(random.nextInt(network.ties.size()))))
        .containsAll(joined(network));
    assertThat(joined(network)).containsAll(joined(network.without()));
  }

  private static Set<List<Integer>> joined(Network network) {
    Carriage carriage = network.fabric().carriage(SHOP);
    Set<List<Integer>> joined = new LinkedHashSet<>();
    for (int from = 0; from < network.ids.size(); from++) {
      for (int to = 0; to < network.ids.size(); to++) {
        if (carriage.joins(point(from), point(to), new Failure.None()) == Truth.YES) {
          joined.add(List.of(from, to));
        }
      }
    }
    return joined;
  }

  /** What may take a way away is found without trying every failure. */
  @Property(tries = 60)
  void suspects_hold_every_failure_that_parts_two_places(
      @ForAll long seed, @ForAll boolean multiple) {
    Network network = new Network(seed, multiple ? Mode.MST : Mode.RSTP);
    Fabric fabric = network.fabric();
    Carriage carriage = fabric.carriage(SHOP);
    for (int from = 0; from < network.ids.size(); from++) {
      for (int to = 0; to < network.ids.size(); to++) {
        if (carriage.joins(point(from), point(to), new Failure.None()) == Truth.YES) {
          Set<Failure> suspects = carriage.suspects(point(from), point(to));
          for (Failure failure : fabric.failures()) {
            if (!network.reached(from, failure).contains(to)) {
              assertThat(suspects).as("s%s s%s %s", from, to, network.design()).contains(failure);
            }
          }
        }
      }
    }
  }
}
