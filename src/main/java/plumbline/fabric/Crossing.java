package plumbline.fabric;

import java.util.Optional;
import plumbline.setting.Carried;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * What passes a link: a VLAN crosses where both ends carry it, both with a tag or both without.
 *
 * @param vlans the VLANs that cross
 * @param mismatch the VLANs of untagged frames, where both ends have one and they differ
 */
public record Crossing(Carried vlans, Optional<Mismatch> mismatch) {
  /**
   * Untagged frames of one VLAN that arrive in another.
   *
   * @param first VLAN at the first end
   * @param second VLAN at the second end
   */
  public record Mismatch(VlanId first, VlanId second) {}

  /** What passes between two ends. */
  static Crossing between(Traffic first, Traffic second) {
    VlanSet certain = first.tagged().certain().and(second.tagged().certain());
    VlanSet possible = first.tagged().possible().and(second.tagged().possible());
    boolean open = !first.untagged().isDecided() || !second.untagged().isDecided();
    if (open) {
      possible = first.carried().possible().and(second.carried().possible());
    } else {
      VlanSet both = first.bare().and(second.bare());
      possible = possible.plus(both);
      certain = certain.plus(both.and(first.carried().certain()).and(second.carried().certain()));
    }
    Optional<Mismatch> mismatch =
        first
            .untagged()
            .value()
            .filter(vlan -> first.bare().contains(vlan))
            .flatMap(
                one ->
                    second
                        .untagged()
                        .value()
                        .filter(vlan -> second.bare().contains(vlan) && !vlan.equals(one))
                        .map(other -> new Mismatch(one, other)));
    return new Crossing(new Carried(certain, possible), mismatch);
  }
}
