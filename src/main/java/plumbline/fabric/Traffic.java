package plumbline.fabric;

import java.util.Optional;
import plumbline.setting.Carried;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * What passes one end of a link.
 *
 * @param tagged the VLANs whose frames carry their tag
 * @param untagged the VLAN of frames without a tag; absent where none pass
 * @param carried all of them
 */
public record Traffic(Carried tagged, Setting<VlanId> untagged, Carried carried) {
  /** Nothing is known: everything is possible. */
  static final Traffic UNKNOWN =
      of(
          new Carried(VlanSet.NONE, VlanSet.ALL),
          Setting.unknown("no config of the switch at this end was read"));

  /** Splits what an end carries by its tags. */
  static Traffic of(Carried carried, Setting<VlanId> untagged) {
    if (!untagged.isDecided()) {
      // any of them may be the one without a tag
      return new Traffic(new Carried(VlanSet.NONE, carried.possible()), untagged, carried);
    }
    VlanSet bare = set(untagged.value());
    return new Traffic(
        new Carried(carried.certain().minus(bare), carried.possible().minus(bare)),
        untagged,
        carried);
  }

  /** The VLAN of untagged frames as a set: where it is decided, set and possibly carried. */
  VlanSet bare() {
    return set(untagged.value()).and(carried.possible());
  }

  private static VlanSet set(Optional<VlanId> vlan) {
    return vlan.map(one -> VlanSet.of(one.number())).orElse(VlanSet.NONE);
  }
}
