package plumbline.fabric;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.Truth;

/** Finds which switches hear each other's MST frames for certain, whatever region they are of. */
final class MstParts {
  private MstParts() {}

  static List<List<String>> of(Fabric fabric) {
    List<String> switches = List.copyOf(fabric.design().switches().keySet());
    Map<String, Integer> index = new LinkedHashMap<>();
    switches.forEach(name -> index.put(name, index.size()));
    Parts parts = new Parts(switches.size(), any -> false);
    fabric.links().stream()
        .filter(MstParts::runsOver)
        .forEach(
            link ->
                parts.join(
                    new Connectivity.Edge(
                        index.get(link.first().port().switchName()),
                        index.get(link.second().port().switchName()))));
    int[] all = parts.all();
    Map<Integer, List<String>> found = new LinkedHashMap<>();
    for (String name : switches) {
      found.computeIfAbsent(all[index.get(name)], any -> new ArrayList<>()).add(name);
    }
    return found.values().stream().filter(part -> part.size() > 1).toList();
  }

  static List<String> neighbours(Fabric fabric, String name) {
    return fabric.links().stream()
        .filter(MstParts::runsOver)
        .map(link -> link.ends().stream().map(end -> end.port().switchName()).toList())
        .filter(ends -> ends.contains(name))
        .map(ends -> ends.get(0).equals(name) ? ends.get(1) : ends.get(0))
        .distinct()
        .toList();
  }

  private static boolean runsOver(FabricLink link) {
    return link.isOpen() == Truth.YES
        && link.ends().stream().allMatch(end -> speaks(end) && !mayBeFiltered(end));
  }

  private static boolean speaks(LinkEnd end) {
    return end.device()
        .map(device -> TreeFamily.of(device.tree().mode()))
        .equals(Optional.of(Optional.of(TreeFamily.MULTIPLE)));
  }

  private static boolean mayBeFiltered(LinkEnd end) {
    return end.settings()
        .map(port -> port.get(Keys.BPDU_FILTER))
        .filter(filter -> filter.isDecided() && !filter.is(Effect.ON))
        .isEmpty();
  }
}
