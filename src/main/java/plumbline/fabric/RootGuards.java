package plumbline.fabric;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.design.DesignPort;
import plumbline.setting.Effect;
import plumbline.setting.Keys;
import plumbline.setting.Setting;

/**
 * Finds the root guards of a part of a tree that might act: a port that has one blocks when it
 * hears a better root than its own (IEEE 802.1Q, restrictedRole). Where the root is on the near
 * side, or nothing but this link leads from the far side to it, it hears none.
 */
final class RootGuards {
  private final Map<Integer, FabricLink> links;
  private final String root;

  private RootGuards(Map<Integer, FabricLink> links, String root) {
    this.links = links;
    this.root = root;
  }

  /**
   * A port with root guard.
   *
   * @param link index of the link
   * @param end 0 for its first end, 1 for the other
   * @param port the port
   * @param isOn whether it has it for certain
   */
  record Guard(int link, int end, DesignPort port, boolean isOn) {}

  /**
   * The guards that might act.
   *
   * @param links the links of the part, by index
   * @param root its root
   */
  static List<Guard> of(Map<Integer, FabricLink> links, String root) {
    RootGuards guards = new RootGuards(links, root);
    List<Guard> found = new ArrayList<>();
    links.forEach(
        (index, link) -> {
          for (int end = 0; end < link.ends().size(); end++) {
            guard(index, end, link)
                .filter(guard -> guards.mayHearRoot(link, link.ends().get(1 - guard.end())))
                .ifPresent(found::add);
          }
        });
    return found;
  }

  private static Optional<Guard> guard(int index, int end, FabricLink link) {
    LinkEnd at = link.ends().get(end);
    Optional<Setting<Effect>> guard = at.settings().map(port -> port.get(Keys.ROOT_GUARD));
    return guard
        .filter(setting -> !setting.isDecided() || setting.is(Effect.ON))
        .map(setting -> new Guard(index, end, at.port(), setting.is(Effect.ON)));
  }

  /** Both switches of a pair are one bridge on a bundle that ends on both. */
  private boolean mayHearRoot(FabricLink link, LinkEnd far) {
    Set<FabricLink> bundle = new LinkedHashSet<>(List.of(link));
    if (far.shared()) {
      links.values().stream()
          .filter(other -> other.ends().stream().anyMatch(end -> end.port().equals(far.port())))
          .forEach(bundle::add);
    }
    boolean near =
        bundle.stream()
            .flatMap(one -> one.ends().stream())
            .anyMatch(
                end -> !end.port().equals(far.port()) && end.port().switchName().equals(root));
    return !near && reachesRoot(far.port().switchName(), bundle);
  }

  private boolean reachesRoot(String from, Set<FabricLink> without) {
    Set<String> seen = new HashSet<>(Set.of(from));
    ArrayDeque<String> open = new ArrayDeque<>(seen);
    while (!open.isEmpty() && !seen.contains(root)) {
      String at = open.remove();
      for (FabricLink link : links.values()) {
        List<String> ends = link.ends().stream().map(end -> end.port().switchName()).toList();
        if (ends.contains(at) && !without.contains(link)) {
          ends.stream().filter(seen::add).forEach(open::add);
        }
      }
    }
    return seen.contains(root);
  }
}
