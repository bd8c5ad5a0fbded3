package plumbline.promise;

import java.util.Arrays;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import plumbline.design.Design;
import plumbline.design.DesignSwitch;
import plumbline.design.DesignVlan;
import plumbline.design.Wanted;
import plumbline.effective.SpanningTree;
import plumbline.setting.Setting;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** The spanning tree of a switch with what rules find on it repaired. */
final class RepairedTree {
  private final Design design;
  private final Predicate<String> repaired;

  RepairedTree(Design design, Predicate<String> repaired) {
    this.design = design;
    this.repaired = repaired;
  }

  /** The tree of a switch, repaired. */
  SpanningTree of(DesignSwitch.Tree wanted, SpanningTree found) {
    boolean mode = repaired.test("spanning-tree-mode-differs");
    Optional<TreeMode.Mode> wished = wanted.mode().filter(any -> mode).map(RepairedTree::mode);
    boolean on = repaired.test("spanning-tree-off");
    return new SpanningTree(
        wished
            .<Setting<TreeMode.Mode>>map(Setting::known)
            .filter(wish -> !found.mode().equals(wish))
            .orElse(found.mode()),
        wanted
            .pathCost()
            .filter(any -> mode)
            .map(wish -> Setting.known(wish.value().equals("long")))
            .orElse(found.longCosts()),
        on ? Setting.known(VlanSet.NONE) : found.off(),
        found.vlanPriorities(),
        found.instancePriorities(),
        found.priority(),
        wanted
            .mst()
            .filter(any -> mode)
            .map(wish -> region(wish.value(), found.region()))
            .orElse(found.region()));
  }

  private static TreeMode.Mode mode(Wanted<String> wish) {
    return Arrays.stream(TreeMode.Mode.values())
        .filter(one -> one.toString().equals(wish.value()))
        .findFirst()
        .orElseThrow();
  }

  /** Every VLAN of the design in its instance; where others stand is not the design's matter. */
  private SpanningTree.Region region(DesignSwitch.Mst wish, SpanningTree.Region found) {
    VlanSet declared =
        VlanSet.of(
            design.vlans().values().stream().map(DesignVlan::id).<VlanId>map(id -> id).toList());
    SortedMap<Integer, VlanSet> instances = new TreeMap<>();
    found.instances().forEach((instance, vlans) -> instances.put(instance, vlans.minus(declared)));
    wish.instances()
        .forEach(
            (instance, vlans) ->
                instances.merge(
                    instance,
                    VlanSet.of(vlans.stream().map(DesignVlan::id).toList()),
                    VlanSet::plus));
    instances.remove(0);
    instances.values().removeIf(VlanSet::isEmpty);
    return new SpanningTree.Region(
        Setting.known(wish.name()),
        Setting.known(wish.revision()),
        instances,
        found.doubt(),
        found.lines());
  }
}
