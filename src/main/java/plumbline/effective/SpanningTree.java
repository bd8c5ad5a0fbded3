package plumbline.effective;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.statement.SwitchCommand.TreeMode;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * Spanning tree of the whole switch, as its mode lets it work: per-VLAN lines have no effect in
 * multiple spanning tree, and its lines none outside it.
 *
 * @param mode protocol in use
 * @param longCosts true for 32-bit path costs
 * @param off VLANs whose tree is turned off; undecided where lines that are not in this text may
 *     turn off others
 * @param vlanPriorities configured bridge priorities by VLAN; {@code priority} where none
 * @param instancePriorities configured bridge priorities by MST instance; {@code priority} where
 *     none
 * @param priority bridge priority of the trees without a line of their own
 * @param region MST region
 */
public record SpanningTree(
    Setting<TreeMode.Mode> mode,
    Setting<Boolean> longCosts,
    Setting<VlanSet> off,
    SortedMap<VlanId, Priority> vlanPriorities,
    SortedMap<Integer, Priority> instancePriorities,
    Priority priority,
    Region region) {
  /** Bridge priority where no line sets one (RFC 4188, {@code dot1dStpPriority}). */
  public static final int DEFAULT_PRIORITY = 32768;

  /** Bridge priority that asking for the root's place gives, unless a lower root was seen then. */
  public static final int ROOT_PRIMARY_PRIORITY = 24576;

  /** Bridge priority that asking for the second place gives. */
  public static final int ROOT_SECONDARY_PRIORITY = 28672;

  /** Copies the maps. */
  public SpanningTree {
    vlanPriorities = Collections.unmodifiableSortedMap(new TreeMap<>(vlanPriorities));
    instancePriorities = Collections.unmodifiableSortedMap(new TreeMap<>(instancePriorities));
  }

  /** The bridge priority in the tree of one VLAN, in the per-VLAN modes. */
  public Priority priorityOf(VlanId vlan) {
    return vlanPriorities.getOrDefault(vlan, priority);
  }

  /** The bridge priority in one instance of multiple spanning tree. */
  public Priority priorityOf(int instance) {
    return instancePriorities.getOrDefault(instance, priority);
  }

  /** Whether no tree protects the VLAN. */
  public Truth isOff(VlanId vlan) {
    if (mode.is(TreeMode.Mode.NONE)) {
      return Truth.YES;
    }
    Truth line = off.value().map(vlans -> Truth.of(vlans.contains(vlan))).orElse(Truth.UNKNOWN);
    return mode.isDecided() || line == Truth.YES ? line : Truth.UNKNOWN;
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
      /** By number, or not at all. */
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
   * @param doubt why the instances may not be all; empty where they are
   * @param lines the lines that make or undo the instances, in order
   */
  public record Region(
      Setting<String> name,
      Setting<Integer> revision,
      SortedMap<Integer, VlanSet> instances,
      Optional<String> doubt,
      List<Evidence> lines) {
    /** Copies the collections. */
    public Region {
      lines = List.copyOf(lines);
      instances = Collections.unmodifiableSortedMap(new TreeMap<>(instances));
    }

    /** The instance that a VLAN belongs to; instance 0 holds the rest. */
    public Setting<Integer> instanceOf(VlanId vlan) {
      return instances.entrySet().stream()
          .filter(entry -> entry.getValue().contains(vlan))
          .map(entry -> Setting.known(entry.getKey()))
          .findFirst()
          .orElseGet(
              () ->
                  doubt
                      .map(why -> new Setting.Unknown<Integer>(why, lines))
                      .map(unknown -> (Setting<Integer>) unknown)
                      .orElseGet(() -> Setting.known(0)));
    }
  }
}
