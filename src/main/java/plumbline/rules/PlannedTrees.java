package plumbline.rules;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.effective.SwitchSettings;
import plumbline.fabric.Fabric;
import plumbline.fabric.Failure;
import plumbline.fabric.TreeFamily;
import plumbline.fabric.TreePart;
import plumbline.fabric.TreeScope;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;

/** Holds the trees that a network settles on against the roots and seconds that a design plans. */
final class PlannedTrees {
  private static final Failure NOTHING = new Failure.None();

  /** A tree is large, and those of one VLAN are asked for one after the other. */
  private static final int MOST_TREES = 32;

  private final Fabric fabric;

  private final Map<List<Object>, List<TreePart>> trees =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Object>, List<TreePart>> eldest) {
          return size() > MOST_TREES;
        }
      };
  private final Map<List<Object>, RootAnswer> roots = new HashMap<>();

  /** Switches in a mode of another kind: their lines about priorities are without effect now. */
  private final Set<String> moved = new HashSet<>();

  /**
   * Trees of one network.
   *
   * @param found the network as found
   * @param fabric the same with the findings of narrower rules repaired
   */
  PlannedTrees(Fabric found, Fabric fabric) {
    this.fabric = fabric;
    for (String name : fabric.design().switches().keySet()) {
      Optional<TreeFamily> before = family(found, name);
      if (before.isPresent() && !before.equals(family(fabric, name))) {
        moved.add(name);
      }
    }
  }

  private static Optional<TreeFamily> family(Fabric network, String name) {
    return network.settings(name).flatMap(device -> TreeFamily.of(device.tree().mode()));
  }

  /** The tree that carries a VLAN at a switch that was read; empty where it has none. */
  Optional<Setting<TreeScope>> scope(String name, VlanId vlan) {
    SpanningTree tree = fabric.settings(name).map(SwitchSettings::tree).orElseThrow();
    Optional<TreeFamily> family = TreeFamily.of(tree.mode());
    if (family.isEmpty()) {
      return Optional.of(
          new Setting.Unknown<>(
              tree.mode().reason().orElse("its spanning-tree mode is open"),
              tree.mode().evidence()));
    }
    return switch (family.get()) {
      case NONE -> Optional.empty();
      case MULTIPLE ->
          Optional.of(
              tree.region()
                  .instanceOf(vlan)
                  .map(instance -> new TreeScope(vlan, OptionalInt.of(instance))));
      case PER_VLAN, SINGLE -> Optional.of(Setting.known(TreeScope.of(vlan)));
    };
  }

  /** Whether a switch that was read is the root where it is planned to be. */
  RootAnswer root(String name, DesignVlan vlan) {
    return inTree(name, vlan, scope -> root(name, vlan, scope));
  }

  /** Whether a switch that was read becomes the root where it is planned to be the second. */
  RootAnswer second(String name, DesignVlan vlan) {
    return inTree(name, vlan, scope -> second(name, vlan, scope));
  }

  private interface Question {
    RootAnswer in(TreeScope scope);
  }

  private RootAnswer inTree(String name, DesignVlan vlan, Question question) {
    Optional<Setting<TreeScope>> scope = scope(name, vlan.id());
    if (scope.isEmpty()) {
      return new RootAnswer.Untold();
    }
    return scope
        .get()
        .value()
        .map(question::in)
        .orElseGet(
            () -> new RootAnswer.Open(scope.get().reason().orElseThrow(), scope.map(one -> one)));
  }

  private RootAnswer root(String name, DesignVlan vlan, TreeScope scope) {
    RootAnswer known = roots.get(List.of(name, key(scope)));
    if (known == null) {
      known = settledRoot(name, vlan, scope);
      roots.put(List.of(name, key(scope)), known);
    }
    return known;
  }

  private RootAnswer settledRoot(String name, DesignVlan vlan, TreeScope scope) {
    TreePart part = part(scope, NOTHING, name);
    if (part.switches().size() == 1) {
      return alone(vlan, scope);
    }
    List<String> ahead = ahead(part, name);
    if (!ahead.isEmpty()) {
      return new RootAnswer.Taken(ahead.get(0), part, scope, Optional.empty());
    }
    if (isMoved(part)) {
      return new RootAnswer.Untold();
    }
    return part.root().equals(Optional.of(name))
        ? new RootAnswer.Kept()
        : open(part, name, scope, Set.of());
  }

  private List<String> ahead(TreePart part, String name) {
    return moved.contains(name)
        ? List.of()
        : part.ahead(name).stream().filter(other -> !moved.contains(other)).toList();
  }

  private boolean isMoved(TreePart part) {
    return part.switches().stream().anyMatch(moved::contains);
  }

  /** What is cut into parts, or belongs to another region, is told by other rules. */
  private RootAnswer alone(DesignVlan vlan, TreeScope scope) {
    List<TreePart> others =
        parts(scope, NOTHING).stream().filter(part -> part.switches().size() > 1).toList();
    if (others.isEmpty()) {
      return new RootAnswer.Kept();
    }
    boolean told = vlan.oneDomain() || scope.instance().isPresent();
    return !told && others.get(0).root().isPresent()
        ? new RootAnswer.Apart(others.get(0), scope)
        : new RootAnswer.Untold();
  }

  private RootAnswer second(String name, DesignVlan vlan, TreeScope scope) {
    Optional<DesignSwitch> planned = plannedRoot(scope);
    TreePart before = part(scope, NOTHING, name);
    Optional<String> root = planned.map(DesignSwitch::name).or(before::root);
    if (root.isEmpty() || root.get().equals(name)) {
      return root.isEmpty() ? open(before, name, scope, Set.of()) : new RootAnswer.Untold();
    }
    RootAnswer first =
        planned.isPresent() && fabric.settings(root.get()).isPresent()
            ? root(root.get(), vlan, scope)
            : new RootAnswer.Kept();
    Set<String> told =
        first instanceof RootAnswer.Taken taken && !taken.by().equals(name)
            ? Set.of(taken.by())
            : Set.of();
    TreePart after = part(scope, new Failure.OfSwitch(root.get(), OptionalInt.empty()), name);
    if (after.switches().size() == 1 && before.switches().size() > 2) {
      return new RootAnswer.Untold();
    }
    Optional<String> ahead =
        ahead(after, name).stream().filter(other -> !told.contains(other)).findFirst();
    if (ahead.isPresent()) {
      return new RootAnswer.Taken(ahead.get(), after, scope, root);
    }
    if (isMoved(after)) {
      return new RootAnswer.Untold();
    }
    boolean kept = after.doubt().isEmpty() && told.containsAll(after.unbeaten(name));
    boolean open = first instanceof RootAnswer.Kept;
    return kept
        ? new RootAnswer.Kept()
        : open ? open(after, name, scope, told) : new RootAnswer.Untold();
  }

  /** Of a part with switches that were not read the report says so. */
  private RootAnswer open(TreePart part, String name, TreeScope scope, Set<String> told) {
    if (!part.isRead()) {
      return new RootAnswer.Untold();
    }
    Setting<Integer> own = priority(name, scope).value();
    if (!own.isDecided()) {
      return new RootAnswer.Open(
          part.doubt().orElse("its bridge priority is open"), Optional.of(own));
    }
    return new RootAnswer.Open(
        part.doubt()
            .orElseGet(
                () ->
                    Words.list(
                            Stream.concat(Stream.of(name), part.unbeaten(name).stream())
                                .filter(one -> !told.contains(one))
                                .toList())
                        + " have the same priority "
                        + own.value().orElseThrow()
                        + ", and the design does not name the bridge addresses that decide"),
        Optional.empty());
  }

  /** The switch that is planned as the root of a tree. */
  Optional<DesignSwitch> plannedRoot(TreeScope scope) {
    return fabric.design().switches().values().stream()
        .filter(one -> one.tree().rootOf().stream().anyMatch(vlan -> isIn(one, vlan, scope)))
        .findFirst();
  }

  /** Whether a switch is planned as the root or the second of a tree. */
  boolean isPlanned(String name, TreeScope scope) {
    DesignSwitch one = fabric.design().switches().get(name);
    return Stream.concat(one.tree().rootOf().stream(), one.tree().secondFor().stream())
        .anyMatch(vlan -> isIn(one, vlan, scope));
  }

  private boolean isIn(DesignSwitch planned, Wanted<DesignVlan> vlan, TreeScope scope) {
    VlanId id = vlan.value().id();
    boolean read = fabric.settings(planned.name()).isPresent();
    return (read && scope.instance().isPresent())
        ? scope(planned.name(), id)
            .flatMap(Setting::value)
            .filter(other -> other.instance().equals(scope.instance()))
            .isPresent()
        : id.equals(scope.vlan());
  }

  /** The bridge priority of a switch in a tree. */
  SpanningTree.Priority priority(String name, TreeScope scope) {
    return scope.priority(fabric.settings(name).orElseThrow().tree());
  }

  private TreePart part(TreeScope scope, Failure failure, String name) {
    return parts(scope, failure).stream()
        .filter(part -> part.switches().contains(name))
        .findFirst()
        .orElseThrow();
  }

  private List<TreePart> parts(TreeScope scope, Failure failure) {
    List<Object> key = List.of(key(scope), failure);
    List<TreePart> known = trees.get(key);
    if (known == null) {
      known = fabric.tree(scope, failure);
      trees.put(key, known);
    }
    return known;
  }

  /** Of one instance there is one tree, whatever VLAN is asked about. */
  private static Object key(TreeScope scope) {
    return scope.instance().isPresent() ? scope.instance() : scope.vlan();
  }
}
