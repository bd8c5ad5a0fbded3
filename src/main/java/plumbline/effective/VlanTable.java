package plumbline.effective;

import java.util.Arrays;
import java.util.NavigableMap;
import java.util.TreeMap;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * The VLANs of a switch while its stanzas are read, by number. A stanza may name all of them and
 * stand a hundred thousand times, so that whole ranges change at once.
 */
final class VlanTable {
  private static final int SIZE = VlanId.MAX + 1;

  private final Setting<?>[] names = new Setting<?>[SIZE];
  private final Setting<?>[] states = new Setting<?>[SIZE];

  /** The lines that shut VLANs, which hold over their state; null where none does. */
  private final Evidence[] shutLines = new Evidence[SIZE];

  private final Evidence[] removals = new Evidence[SIZE];
  private VlanSet present = VlanSet.NONE;
  private VlanSet removed = VlanSet.NONE;

  /** The VLANs that exist so far. */
  VlanSet present() {
    return present;
  }

  /** Adds those that do not exist yet. */
  void add(VlanSet vlans, Setting<String> name, Setting<Boolean> state) {
    VlanSet fresh = vlans.minus(present);
    fill(names, fresh, name);
    fill(states, fresh, state);
    fill(shutLines, fresh, null);
    present = present.plus(vlans);
    removed = removed.minus(vlans);
  }

  /** Forgets them: what is said of them is in doubt. */
  void forget(VlanSet vlans) {
    present = present.minus(vlans);
  }

  /** Removes them by a line; VLAN 1 cannot be removed. */
  void remove(VlanSet vlans, Evidence line) {
    VlanSet gone = vlans.minus(VlanSet.of(VlanId.MIN));
    fill(removals, gone, line);
    present = present.minus(vlans);
    removed = removed.plus(gone);
  }

  /** Names those that exist. */
  void name(VlanSet vlans, Setting<String> name) {
    fill(names, vlans.and(present), name);
  }

  /** Sets the state of those that exist. */
  void state(VlanSet vlans, Setting<Boolean> active) {
    fill(states, vlans.and(present), active);
  }

  /** Shuts those that exist, by a line. */
  void shut(VlanSet vlans, Evidence line) {
    fill(shutLines, vlans.and(present), line);
  }

  /** Opens those that exist again. */
  void open(VlanSet vlans) {
    fill(shutLines, vlans.and(present), null);
  }

  private static <T> void fill(T[] table, VlanSet vlans, T value) {
    vlans.forEachRange((first, last) -> Arrays.fill(table, first, last + 1, value));
  }

  /** Puts the VLANs that exist into a database. */
  void putInto(NavigableMap<VlanId, VlanDatabase.Entry> entries) {
    present.ids().mapToObj(VlanId::new).forEach(id -> entries.put(id, entry(id)));
  }

  @SuppressWarnings("unchecked") // only settings of these types are ever stored
  private VlanDatabase.Entry entry(VlanId id) {
    Evidence shut = shutLines[id.number()];
    return new VlanDatabase.Entry(
        id,
        (Setting<String>) names[id.number()],
        shut == null ? (Setting<Boolean>) states[id.number()] : Setting.known(false, shut));
  }

  /** The VLANs that a line removes for good, with that line. */
  NavigableMap<VlanId, Evidence> removed() {
    NavigableMap<VlanId, Evidence> lines = new TreeMap<>();
    removed.ids().forEach(id -> lines.put(new VlanId(id), removals[id]));
    return lines;
  }
}
