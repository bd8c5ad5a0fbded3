package plumbline.fabric;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import plumbline.fabric.Connectivity.Edge;
import plumbline.setting.Truth;

/**
 * The links over which one tree forwards, with each failure: those with two forwarding ends. A link
 * without which the switches at its ends would be parted forwards whatever the tree, as nothing can
 * stand in for it.
 */
final class Forwarding {
  private final Fabric fabric;
  private final TreeScope scope;
  private final Map<Failure, Passing> known = new HashMap<>();

  /**
   * What forwards.
   *
   * @param certain links that forward for certain, by index
   * @param possible links that forward for certain or perhaps
   * @param roots the switches that are a root for certain
   */
  record Passing(BitSet certain, BitSet possible, Set<String> roots) {}

  Forwarding(Fabric fabric, TreeScope scope) {
    this.fabric = fabric;
    this.scope = scope;
  }

  /** What forwards while something fails. */
  Passing during(Failure failure) {
    return known.computeIfAbsent(failure, this::settle);
  }

  private Passing settle(Failure failure) {
    List<FabricLink> links = fabric.links();
    Map<String, TreePart> parts = new HashMap<>();
    Set<String> roots = new HashSet<>();
    for (TreePart part : fabric.tree(scope, failure)) {
      part.switches().forEach(name -> parts.put(name, part));
      part.root().ifPresent(roots::add);
    }
    BitSet needed = needed(failure);
    BitSet certain = new BitSet();
    BitSet possible = new BitSet();
    for (int link = 0; link < links.size(); link++) {
      Truth open = links.get(link).isOpen().and(fabric.stands(link, failure));
      if (open == Truth.NO) {
        continue;
      }
      Optional<TreePart> part =
          Optional.ofNullable(parts.get(links.get(link).first().port().switchName()));
      List<PortRole> roles =
          part.map(TreePart::roles).orElse(Map.of()).getOrDefault(link, List.of());
      boolean blocked = roles.stream().anyMatch(PortRole::isBlocked);
      boolean forwards = !roles.isEmpty() && roles.stream().allMatch(PortRole::isForwarding);
      possible.set(link, !blocked || needed.get(link));
      certain.set(
          link, open == Truth.YES && (forwards || needed.get(link) || isFree(links.get(link))));
    }
    return new Passing(certain, possible, roots);
  }

  /** Without a tree at both ends nothing blocks. */
  private static boolean isFree(FabricLink link) {
    return link.ends().stream()
        .allMatch(
            end ->
                end.device()
                    .flatMap(device -> TreeFamily.of(device.tree().mode()))
                    .filter(TreeFamily.NONE::equals)
                    .isPresent());
  }

  /** The links that nothing stands in for. */
  private BitSet needed(Failure failure) {
    Map<String, Integer> index = new HashMap<>();
    fabric.design().switches().keySet().forEach(name -> index.put(name, index.size()));
    List<Edge> edges = new ArrayList<>();
    List<Integer> links = new ArrayList<>();
    for (int link = 0; link < fabric.links().size(); link++) {
      FabricLink one = fabric.links().get(link);
      if (one.isOpen().and(fabric.stands(link, failure)) != Truth.NO) {
        edges.add(
            new Edge(
                index.get(one.first().port().switchName()),
                index.get(one.second().port().switchName())));
        links.add(link);
      }
    }
    BitSet needed = new BitSet();
    Connectivity.of(index.size(), edges).bridges().forEach(edge -> needed.set(links.get(edge)));
    return needed;
  }
}
