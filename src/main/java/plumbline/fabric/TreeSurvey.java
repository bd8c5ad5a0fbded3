package plumbline.fabric;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import plumbline.design.DesignSwitch;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.effective.SpanningTree.Priority.Asked;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Setting;
import plumbline.setting.Truth;

/**
 * Finds the parts of a spanning tree and settles each of them, or says why it cannot be told: a
 * switch whose config was not read or whose mode is open, switches of different families, a link of
 * which the text does not tell whether the tree runs over it.
 */
final class TreeSurvey {
  private final Fabric fabric;
  private final TreeScope scope;
  private final Failure failure;
  private final Map<String, String> partOf = new LinkedHashMap<>();
  private final Map<Integer, FabricLink> joining = new LinkedHashMap<>();
  private final Map<String, String> doubts = new LinkedHashMap<>();

  /** The same as {@link #partOf}, but only over links that the tree runs over for certain. */
  private final Map<String, String> certainPartOf = new LinkedHashMap<>();

  private TreeSurvey(Fabric fabric, TreeScope scope, Failure failure) {
    this.fabric = fabric;
    this.scope = scope;
    this.failure = failure;
  }

  /** The parts of a tree while something fails, in design order. */
  static List<TreePart> of(Fabric fabric, TreeScope scope, Failure failure) {
    TreeSurvey survey = new TreeSurvey(fabric, scope, failure);
    survey.walk();
    return survey.parts();
  }

  private void walk() {
    for (DesignSwitch one : fabric.design().switches().values()) {
      if (!isDown(one.name())) {
        partOf.put(one.name(), one.name());
        certainPartOf.put(one.name(), one.name());
        whyOpen(one.name()).ifPresent(why -> doubts.putIfAbsent(one.name(), why));
      }
    }
    for (int index = 0; index < fabric.links().size(); index++) {
      FabricLink link = fabric.links().get(index);
      Truth runs = runsOver(index, link).and(fabric.stands(index, failure));
      if (runs != Truth.NO) {
        joining.put(index, link);
        join(partOf, link);
      }
      if (runs == Truth.YES) {
        join(certainPartOf, link);
      }
      if (runs == Truth.UNKNOWN) {
        doubts.putIfAbsent(
            link.first().port().switchName(),
            "the text does not tell whether the tree runs over the link "
                + link.first().port().switchName()
                + " - "
                + link.second().port().switchName());
      }
    }
  }

  private boolean isDown(String name) {
    return failure instanceof Failure.OfSwitch down
        && down.name().equals(name)
        && down.member().isEmpty();
  }

  private Optional<String> whyOpen(String name) {
    Optional<SwitchSettings> settings = fabric.settings(name);
    if (settings.isEmpty()) {
      return Optional.of("no config of " + name + " was read");
    }
    SpanningTree tree = settings.get().tree();
    if (TreeFamily.of(tree.mode()).isEmpty()) {
      return Optional.of("the spanning-tree mode of " + name + " is open" + why(tree.mode()));
    }
    if (tree.isOff(scope.vlan()) != Truth.NO) {
      return Optional.of(name + " has no spanning tree there, or may have none");
    }
    return scope.priority(tree).value().isDecided()
        ? Optional.empty()
        : Optional.of(
            "the bridge priority of " + name + " is open" + why(scope.priority(tree).value()));
  }

  private static String why(Setting<?> setting) {
    return setting.reason().map(reason -> ": " + reason).orElse("");
  }

  /** Whether the tree runs over a link; the edge between two families is open. */
  private Truth runsOver(int index, FabricLink link) {
    LinkFacts facts = fabric.facts(index);
    Truth runs =
        facts.isWithin(TreeFamily.PER_VLAN)
            ? facts.carries(scope.vlan())
            : facts.isWithinOne()
                ? facts.open().and(isInside(link))
                : facts.open().and(Truth.UNKNOWN);
    return facts.filtered() ? runs.and(Truth.UNKNOWN) : runs;
  }

  /**
   * Whether the tree goes on over a link: between two regions only the common tree does, which in
   * each of them is instance 0 (IEEE 802.1Q, multiple spanning tree).
   */
  private Truth isInside(FabricLink link) {
    return scope.instance().orElse(0) == 0 ? Truth.YES : isOneRegion(link);
  }

  private Truth isOneRegion(FabricLink link) {
    return fabric
        .region(link.first().port().switchName())
        .isOneWith(fabric.region(link.second().port().switchName()));
  }

  private static void join(Map<String, String> parts, FabricLink link) {
    String one = find(parts, link.first().port().switchName());
    String other = find(parts, link.second().port().switchName());
    parts.put(one, other);
  }

  private static String find(Map<String, String> parts, String name) {
    String at = name;
    while (!parts.get(at).equals(at)) {
      parts.put(at, parts.get(parts.get(at)));
      at = parts.get(at);
    }
    return at;
  }

  private List<TreePart> parts() {
    Map<String, List<String>> switches = new LinkedHashMap<>();
    List.copyOf(partOf.keySet())
        .forEach(
            name ->
                switches.computeIfAbsent(find(partOf, name), any -> new ArrayList<>()).add(name));
    Map<String, Map<Integer, FabricLink>> links = new LinkedHashMap<>();
    joining.forEach(
        (index, link) ->
            links
                .computeIfAbsent(
                    find(partOf, link.first().port().switchName()), any -> new LinkedHashMap<>())
                .put(index, link));
    Map<String, String> why = new LinkedHashMap<>();
    doubts.forEach((name, reason) -> why.putIfAbsent(find(partOf, name), reason));
    List<TreePart> parts = new ArrayList<>();
    switches.forEach(
        (part, names) -> {
          List<TreeBridge> bridges = names.stream().map(this::bridge).toList();
          parts.add(
              Optional.ofNullable(why.get(part))
                  .or(() -> whyRootOpen(names))
                  .map(reason -> TreePart.open(bridges, reason))
                  .orElseGet(() -> part(bridges, links.getOrDefault(part, Map.of()))));
        });
    return parts;
  }

  private TreePart part(List<TreeBridge> bridges, Map<Integer, FabricLink> links) {
    TreePart settled =
        links.entrySet().stream().anyMatch(link -> hidesRoles(link.getKey(), link.getValue()))
            ? TreePart.withoutRoles(bridges)
            : TreePart.settle(
                bridges,
                () ->
                    links.entrySet().stream()
                        .map(link -> TreeLink.of(link.getKey(), link.getValue(), scope))
                        .toList());
    boolean guarded = links.keySet().stream().anyMatch(link -> fabric.facts(link).guarded());
    return settled
        .root()
        .filter(any -> guarded)
        .map(root -> RootGuards.of(links, root))
        .filter(guards -> !guards.isEmpty())
        .map(settled::guarded)
        .orElse(settled);
  }

  /**
   * Whether a link leaves the roles open: a multi-chassis pair speaks for one bridge on a bundle
   * that ends on both its switches, and a region speaks for one bridge towards another one.
   */
  private boolean hidesRoles(int index, FabricLink link) {
    return fabric.facts(index).shared()
        || (fabric.facts(index).isWithin(TreeFamily.MULTIPLE) && isOneRegion(link) != Truth.YES);
  }

  /** Whoever asked for the root's place may have got a lower priority if another was low then. */
  private Optional<String> whyRootOpen(List<String> names) {
    List<String> low =
        names.stream()
            .filter(name -> priority(name).value().filter(this::isLow).isPresent())
            .toList();
    return low.size() < 2
        ? Optional.empty()
        : low.stream()
            .filter(name -> asked(name) == Asked.ROOT_PRIMARY)
            .findFirst()
            .map(
                name ->
                    name
                        + " asks for the root's place by `root primary`, whose priority hangs on"
                        + " the others' when it was typed");
  }

  private boolean isLow(int priority) {
    return priority <= SpanningTree.ROOT_PRIMARY_PRIORITY;
  }

  private Setting<Integer> priority(String name) {
    return scope.priority(fabric.settings(name).orElseThrow().tree()).value();
  }

  private Asked asked(String name) {
    return scope.priority(fabric.settings(name).orElseThrow().tree()).asked();
  }

  private TreeBridge bridge(String name) {
    boolean told = whyOpen(name).isEmpty();
    return new TreeBridge(
        name,
        fabric.settings(name).isPresent(),
        told ? Optional.of(id(name)) : Optional.empty(),
        told && asked(name) == Asked.ROOT_PRIMARY,
        find(certainPartOf, name));
  }

  private BridgeId id(String name) {
    OptionalLong address =
        fabric.design().switches().get(name).tree().bridgeAddress().stream()
            .map(Wanted::value)
            .mapToLong(text -> Long.parseLong(text.replace(":", ""), 16))
            .findFirst();
    return scope.id(priority(name).value().orElseThrow(), address);
  }
}
