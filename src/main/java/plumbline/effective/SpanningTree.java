package plumbline.effective;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.setting.Setting;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * Spanning tree of the whole switch.
 *
 * @param mode protocol in use
 * @param longCosts true for 32-bit path costs
 * @param off VLANs whose tree is turned off
 * @param vlanPriorities configured bridge priorities by VLAN; the default where none
 * @param instancePriorities configured bridge priorities by MST instance
 * @param region MST region
 */
public record SpanningTree(
    Setting<TreeMode.Mode> mode,
    Setting<Boolean> longCosts,
    Setting<VlanSet> off,
    SortedMap<VlanId, Priority> vlanPriorities,
    SortedMap<Integer, Priority> instancePriorities,
    Region region) {
  /** Copies the maps. */
  public SpanningTree {
    vlanPriorities = Collections.unmodifiableSortedMap(new TreeMap<>(vlanPriorities));
    instancePriorities = Collections.unmodifiableSortedMap(new TreeMap<>(instancePriorities));
  }

  /**
   * A bridge priority.
   *
   * @param value 0..61440
   * @param asked how it was asked for
   */
  public record Priority(Setting<Integer> value, Asked asked) {
    /** The ways to ask. */
    public enum Asked {
      /** By number. */
      NUMBER,
      /** As root: lower where a lower root was seen when it was typed. */
      ROOT_PRIMARY,
      /** As second. */
      ROOT_SECONDARY
    }
  }

  /**
   * The MST region.
   *
   * @param name up to 32 octets; absent where not set
   * @param revision 0..65535
   * @param instances VLANs by instance, without instance 0
   */
  public record Region(
      Setting<String> name, Setting<Integer> revision, SortedMap<Integer, VlanSet> instances) {
    /** Copies the map. */
    public Region {
      instances = Collections.unmodifiableSortedMap(new TreeMap<>(instances));
    }
  }
}
