package plumbline.fabric;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import plumbline.setting.Truth;

/** Which switches hear each other's MST frames for certain, whatever region they are of. */
public final class MstNetwork {
  private final List<List<String>> parts;
  private final Map<String, List<String>> neighbours = new HashMap<>();

  private MstNetwork(Fabric fabric) {
    List<String> switches = List.copyOf(fabric.design().switches().keySet());
    Map<String, Integer> index = new HashMap<>();
    switches.forEach(name -> index.put(name, index.size()));
    Parts joined = new Parts(switches.size(), any -> false);
    IntStream.range(0, fabric.links().size())
        .filter(link -> runsOver(fabric.facts(link)))
        .mapToObj(fabric.links()::get)
        .forEach(
            link -> {
              String one = link.first().port().switchName();
              String other = link.second().port().switchName();
              joined.join(new Connectivity.Edge(index.get(one), index.get(other)));
              neighbours.computeIfAbsent(one, any -> new ArrayList<>()).add(other);
              neighbours.computeIfAbsent(other, any -> new ArrayList<>()).add(one);
            });
    int[] all = joined.all();
    Map<Integer, List<String>> found = new LinkedHashMap<>();
    for (String name : switches) {
      found.computeIfAbsent(all[index.get(name)], any -> new ArrayList<>()).add(name);
    }
    this.parts = found.values().stream().filter(part -> part.size() > 1).toList();
  }

  /** Looks at a network. */
  public static MstNetwork of(Fabric fabric) {
    return new MstNetwork(fabric);
  }

  private static boolean runsOver(LinkFacts link) {
    return link.open() == Truth.YES && link.isWithin(TreeFamily.MULTIPLE) && !link.filtered();
  }

  /** The switches that MST joins, two or more, in design order. */
  public List<List<String>> parts() {
    return parts;
  }

  /** The switches that a switch hears, in the order of the links. */
  public List<String> neighbours(String switchName) {
    return neighbours.getOrDefault(switchName, List.of()).stream().distinct().toList();
  }
}
