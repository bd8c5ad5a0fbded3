package plumbline.effective;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * The VLANs of one switch.
 *
 * @param known whether the text is known to hold the whole list, so that a VLAN without a stanza
 *     does not exist
 * @param why the reason for that, a clause
 * @param entries the VLANs that have a stanza, and VLAN 1
 */
public record VlanDatabase(boolean known, String why, SortedMap<VlanId, Entry> entries) {
  /** Copies the entries. */
  public VlanDatabase {
    entries = Collections.unmodifiableSortedMap(new TreeMap<>(entries));
  }

  /**
   * One VLAN.
   *
   * @param id identifier
   * @param name its name, absent where none is given
   * @param active false while suspended or shut
   */
  public record Entry(VlanId id, Setting<String> name, Setting<Boolean> active) {}

  /** Whether the VLAN exists on this switch. */
  public Truth exists(VlanId vlan) {
    if (entries.containsKey(vlan)) {
      return Truth.YES;
    }
    return known ? Truth.NO : Truth.UNKNOWN;
  }

  /** Whether the VLAN exists and is active. */
  public Truth isActive(VlanId vlan) {
    Entry entry = entries.get(vlan);
    if (entry == null) {
      return exists(vlan);
    }
    return entry.active().value().map(Truth::of).orElse(Truth.UNKNOWN);
  }

  /** The VLANs that exist for certain. */
  public VlanSet existing() {
    return VlanSet.of(entries.keySet());
  }
}
