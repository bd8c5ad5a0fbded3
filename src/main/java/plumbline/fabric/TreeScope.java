package plumbline.fabric;

import java.util.OptionalInt;
import java.util.OptionalLong;
import plumbline.effective.SpanningTree;
import plumbline.setting.Setting;
import plumbline.setting.TreeNumbers;
import plumbline.vlan.VlanId;

/**
 * Which spanning tree: that of a VLAN in the per-VLAN modes, or an instance of multiple spanning
 * tree. In the modes with one tree both mean that one.
 *
 * @param vlan the VLAN that is asked about
 * @param instance the MST instance; empty for the tree of the VLAN itself
 */
public record TreeScope(VlanId vlan, OptionalInt instance) {
  /** The tree of a VLAN in the per-VLAN modes. */
  public static TreeScope of(VlanId vlan) {
    return new TreeScope(vlan, OptionalInt.empty());
  }

  /** The configured priority in this tree. */
  public SpanningTree.Priority priority(SpanningTree tree) {
    return instance.isPresent() ? tree.priorityOf(instance.getAsInt()) : tree.priorityOf(vlan);
  }

  /** A number of a port in this tree. */
  Setting<Long> number(TreeNumbers numbers) {
    return instance.isPresent() ? numbers.of(instance.getAsInt()) : numbers.of(vlan);
  }

  /** The identifier: the configured bits and the extension add up (IEEE 802.1Q). */
  BridgeId id(int priority, OptionalLong address) {
    int extension = instance.orElse(vlan.number());
    return new BridgeId((priority & 0xF000) + extension, address);
  }
}
