package plumbline.fabric;

import java.util.List;
import java.util.Optional;
import plumbline.setting.Carried;
import plumbline.setting.Effect;
import plumbline.setting.Key;
import plumbline.setting.Keys;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/**
 * What a link is to every spanning tree.
 *
 * @param crosses the VLANs that cross
 * @param open whether frames of spanning tree may cross, whatever VLANs do
 * @param filtered whether a BPDU filter stops them, or may
 * @param shared whether an end is a bundle that another link of the design ends on too
 * @param guarded whether root guard is on at an end, or may be
 * @param families the kinds of tree at both ends
 */
record LinkFacts(
    Carried crosses,
    Truth open,
    boolean filtered,
    boolean shared,
    boolean guarded,
    List<Optional<TreeFamily>> families) {
  static LinkFacts of(FabricLink link) {
    return new LinkFacts(
        link.crosses(),
        link.isOpen(),
        mayBeOn(link, Keys.BPDU_FILTER),
        link.ends().stream().anyMatch(LinkEnd::shared),
        mayBeOn(link, Keys.ROOT_GUARD),
        link.ends().stream()
            .map(end -> end.device().flatMap(device -> TreeFamily.of(device.tree().mode())))
            .toList());
  }

  private static boolean mayBeOn(FabricLink link, Key<Effect> key) {
    return link.ends().stream()
        .flatMap(end -> end.settings().stream())
        .map(port -> port.get(key))
        .anyMatch(setting -> !setting.isDecided() || setting.is(Effect.ON));
  }

  /** Whether both ends have trees of this kind for certain. */
  boolean isWithin(TreeFamily family) {
    return families.stream().allMatch(one -> one.equals(Optional.of(family)));
  }

  /** Whether both ends have trees of one kind for certain. */
  boolean isWithinOne() {
    return families.get(0).isPresent() && families.get(0).equals(families.get(1));
  }

  /** Whether a VLAN crosses. */
  Truth carries(VlanId vlan) {
    if (crosses.certain().contains(vlan)) {
      return Truth.YES;
    }
    return crosses.possible().contains(vlan) ? Truth.UNKNOWN : Truth.NO;
  }
}
