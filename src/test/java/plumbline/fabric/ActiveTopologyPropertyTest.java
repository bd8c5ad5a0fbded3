package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import plumbline.fabric.Segment.End;

/** On random networks the computed tree is the one that exchanged messages settle on. */
class ActiveTopologyPropertyTest {
  private static final int MOST_BRIDGES = 12;

  /** Bridges with addresses in random order, and segments with two or three ends. */
  private record Network(List<BridgeId> ids, List<Segment> segments) {
    static Network random(long seed) {
      Random random = new Random(seed);
      int count = 1 + random.nextInt(MOST_BRIDGES);
      List<Integer> addresses =
          IntStream.range(0, count).boxed().collect(Collectors.toCollection(ArrayList::new));
      java.util.Collections.shuffle(addresses, random);
      List<BridgeId> ids =
          addresses.stream()
              .map(address -> BridgeId.of(4096 * random.nextInt(3), address))
              .toList();
      int[] ports = new int[count];
      List<Segment> segments = new ArrayList<>();
      int number = random.nextInt(2 * count + 1);
      for (int segment = 0; segment < number; segment++) {
        List<End> ends = new ArrayList<>();
        int size = 2 + (random.nextInt(5) == 0 ? 1 : 0);
        for (int end = 0; end < size; end++) {
          int bridge = random.nextInt(count);
          ports[bridge]++;
          ends.add(
              new End(
                  bridge,
                  new PortId(16 * random.nextInt(3), ports[bridge]),
                  1L + random.nextInt(3)));
        }
        segments.add(new Segment(ends));
      }
      return new Network(ids, segments);
    }

    List<List<PortRole>> computed(List<BridgeId> known) {
      ActiveTopology topology = ActiveTopology.of(known, segments);
      return IntStream.range(0, segments.size())
          .mapToObj(
              segment ->
                  IntStream.range(0, segments.get(segment).ports().size())
                      .mapToObj(end -> topology.role(segment, end))
                      .toList())
          .toList();
    }
  }

  @Property(tries = 2000)
  void roles_are_those_that_messages_settle_on(@ForAll long seed) {
    Network network = Network.random(seed);
    assertThat(network.computed(network.ids()))
        .isEqualTo(Bridges.run(network.ids(), network.segments()));
  }

  @Property(tries = 2000)
  void what_is_decided_without_some_addresses_is_true_with_all(@ForAll long seed) {
    Network network = Network.random(seed);
    Random random = new Random(~seed);
    List<BridgeId> known =
        network.ids().stream()
            .map(id -> random.nextBoolean() ? BridgeId.of(id.priority()) : id)
            .toList();
    List<List<PortRole>> all = network.computed(network.ids());
    List<List<PortRole>> some = network.computed(known);
    for (int segment = 0; segment < all.size(); segment++) {
      for (int end = 0; end < all.get(segment).size(); end++) {
        assertThat(some.get(segment).get(end)).isIn(all.get(segment).get(end), PortRole.UNDECIDED);
      }
    }
  }
}
