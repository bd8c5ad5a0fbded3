package plumbline.effective;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.setting.Evidence;
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
 * @param evidence the lines behind that reason; may be empty
 * @param entries the VLANs that have a stanza, and VLAN 1
 * @param removed VLANs that a line removes, with that line: they do not exist, whatever is known of
 *     the others
 * @param doubtful VLANs that only a line in doubt declares or removes
 */
public record VlanDatabase(
    boolean known,
    String why,
    List<Evidence> evidence,
    SortedMap<VlanId, Entry> entries,
    SortedMap<VlanId, Evidence> removed,
    VlanSet doubtful) {
  /** Copies the entries. */
  public VlanDatabase {
    evidence = List.copyOf(evidence);
    entries = Collections.unmodifiableSortedMap(new TreeMap<>(entries));
    removed = Collections.unmodifiableSortedMap(new TreeMap<>(removed));
  }

  /** A database of which no line removes a VLAN or leaves one in doubt. */
  public VlanDatabase(boolean known, String why, SortedMap<VlanId, Entry> entries) {
    this(known, why, List.of(), entries, new TreeMap<>(), VlanSet.NONE);
  }

  /**
   * One VLAN.
   *
   * @param id identifier
   * @param name its name, absent where none is given
   * @param active false while suspended or shut
   */
  public record Entry(VlanId id, Setting<String> name, Setting<Boolean> active) {}

  /**
   * Whether the VLAN exists on this switch. VLANs 1002 to 1005, reserved in many implementations
   * (common practice, no source), are never missing: without a stanza they stay undecided.
   */
  public Truth exists(VlanId vlan) {
    if (entries.containsKey(vlan)) {
      return Truth.YES;
    }
    if (doubtful.contains(vlan) || VlanSet.RESERVED.contains(vlan)) {
      return Truth.UNKNOWN;
    }
    return known || removed.containsKey(vlan) ? Truth.NO : Truth.UNKNOWN;
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

  /** The VLANs that exist and are active, for certain. */
  public VlanSet active() {
    return VlanSet.of(
        entries.keySet().stream().filter(vlan -> isActive(vlan) == Truth.YES).toList());
  }

  /** The VLANs that are active for certain or perhaps; reserved ones only with a stanza. */
  public VlanSet perhapsActive() {
    VlanSet inactive =
        VlanSet.of(entries.keySet().stream().filter(vlan -> isActive(vlan) == Truth.NO).toList());
    VlanSet others =
        known
            ? doubtful
            : VlanSet.ALL
                .minus(VlanSet.of(removed.keySet()))
                .plus(doubtful)
                .minus(VlanSet.RESERVED);
    return existing().plus(others).minus(inactive);
  }
}
