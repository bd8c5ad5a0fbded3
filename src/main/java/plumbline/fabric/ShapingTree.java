package plumbline.fabric;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import plumbline.effective.SwitchSettings;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Finds the tree that decides where frames of a VLAN go, where some link of it lacks the VLAN. */
final class ShapingTree {
  private ShapingTree() {}

  /** The tree; empty where every link of the few trees carries the VLAN. */
  static Optional<TreeScope> of(Fabric fabric, VlanId vlan) {
    Set<OptionalInt> instances = new LinkedHashSet<>();
    for (FabricLink link : fabric.links()) {
      boolean lacks = link.isOpen() != Truth.NO && !link.crosses().certain().contains(vlan);
      if (lacks && link.ends().stream().allMatch(ShapingTree::hasFewTrees)) {
        instances.add(instance(link.first().device().orElseThrow(), vlan));
      }
    }
    return instances.stream().findFirst().map(instance -> new TreeScope(vlan, instance));
  }

  private static boolean hasFewTrees(LinkEnd end) {
    return end.device()
        .flatMap(device -> TreeFamily.of(device.tree().mode()))
        .filter(family -> family == TreeFamily.MULTIPLE || family == TreeFamily.SINGLE)
        .isPresent();
  }

  private static OptionalInt instance(SwitchSettings device, VlanId vlan) {
    boolean multiple =
        TreeFamily.of(device.tree().mode()).filter(TreeFamily.MULTIPLE::equals).isPresent();
    Optional<Integer> instance = device.tree().region().instanceOf(vlan).value();
    return multiple && instance.isPresent() ? OptionalInt.of(instance.get()) : OptionalInt.empty();
  }
}
