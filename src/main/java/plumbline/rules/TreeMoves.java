package plumbline.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import plumbline.fabric.Fabric;
import plumbline.fabric.FabricLink;
import plumbline.fabric.Failure;
import plumbline.fabric.PortRole;
import plumbline.fabric.TreePart;
import plumbline.promise.FailureWords;

/** Which links of a tree block that would forward if another switch were its root. */
final class TreeMoves {
  private static final int MOST = 2;

  private final Fabric fabric;
  private final TreePart now;
  private final TreePart planned;
  private final FailureWords words;

  /**
   * Two states of one part of a tree.
   *
   * @param now as it is
   * @param planned as planned
   */
  TreeMoves(Fabric fabric, TreePart now, TreePart planned) {
    this.fabric = fabric;
    this.now = now;
    this.planned = planned;
    this.words = new FailureWords(fabric);
  }

  /** The links that block for certain and would forward for certain as planned, by index. */
  List<Integer> blocked() {
    return now.roles().keySet().stream()
        .filter(link -> now.roles(link).stream().anyMatch(PortRole::isBlocked))
        .filter(link -> planned.roles(link).stream().allMatch(PortRole::isForwarding))
        .sorted()
        .toList();
  }

  /** What blocks, and where the traffic goes instead; empty where nothing does for certain. */
  Optional<String> sentence() {
    List<Integer> blocked = blocked();
    if (blocked.isEmpty()) {
      return Optional.empty();
    }
    List<String> links = new ArrayList<>();
    for (int link : blocked.subList(0, Math.min(MOST, blocked.size()))) {
      links.add(words.of(new Failure.OfLink(link)));
    }
    if (blocked.size() > MOST) {
      links.add(Words.count(blocked.size() - MOST, "more link"));
    }
    String detour =
        blocked.size() > 1
            ? ""
            : detour(fabric.links().get(blocked.get(0)))
                .map(way -> ": what passed there goes by way of " + way)
                .orElse("");
    return Optional.of(
        Words.list(links)
            + (blocked.size() == 1 ? " blocks" : " block")
            + ", which would forward as planned"
            + detour
            + ".");
  }

  /** The switches between both ends of a link on the way that the tree has now. */
  private Optional<String> detour(FabricLink link) {
    Map<String, List<String>> near = new HashMap<>();
    now.roles()
        .forEach(
            (index, roles) -> {
              if (roles.stream().allMatch(PortRole::isForwarding)) {
                FabricLink one = fabric.links().get(index);
                String from = one.first().port().switchName();
                String to = one.second().port().switchName();
                near.computeIfAbsent(from, any -> new ArrayList<>()).add(to);
                near.computeIfAbsent(to, any -> new ArrayList<>()).add(from);
              }
            });
    String from = link.first().port().switchName();
    String to = link.second().port().switchName();
    Map<String, String> back = new HashMap<>(Map.of(from, from));
    ArrayDeque<String> open = new ArrayDeque<>(List.of(from));
    while (!open.isEmpty() && !back.containsKey(to)) {
      String at = open.remove();
      for (String next : near.getOrDefault(at, List.of())) {
        if (back.putIfAbsent(next, at) == null) {
          open.add(next);
        }
      }
    }
    List<String> way = new ArrayList<>();
    for (String at = back.getOrDefault(to, from); !at.equals(from); at = back.get(at)) {
      way.add(0, at);
    }
    return way.isEmpty() ? Optional.empty() : Optional.of(Words.list(way));
  }
}
