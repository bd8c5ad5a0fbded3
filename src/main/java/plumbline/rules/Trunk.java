package plumbline.rules;

import plumbline.design.DesignVlan;
import plumbline.design.RoleKeys;
import plumbline.setting.Keys;
import plumbline.setting.Setting;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/**
 * A trunk's lists as the rules about them compare them. A native VLAN that is tagged counts with
 * the tagged ones; one that differs from the role's is the native rules' business, not a gap here.
 *
 * @param allowed the allowed list, reserved VLANs left out
 * @param untagged VLANs that are sent untagged for certain: the native one, or none
 * @param perhapsUntagged VLANs that are sent untagged for certain or perhaps
 * @param designedNative the native VLAN that the role names
 */
record Trunk(VlanSet allowed, VlanSet untagged, VlanSet perhapsUntagged, VlanSet designedNative) {
  /** The trunk of a port whose allowed list is known. */
  static Trunk of(PortCase port, VlanSet allowed) {
    Setting<VlanId> found = port.get(Keys.NATIVE_VLAN);
    Setting<Boolean> tagging = port.get(Keys.NATIVE_TAGGING);
    VlanSet perhaps =
        tagging.is(true) ? VlanSet.NONE : found.value().map(Trunk::only).orElse(VlanSet.ALL);
    boolean certain = found.value().isPresent() && tagging.isDecided();
    VlanSet designed =
        port.port()
            .role()
            .value(RoleKeys.NATIVE)
            .map(DesignVlan::id)
            .map(Trunk::only)
            .orElse(VlanSet.NONE);
    return new Trunk(
        allowed.minus(VlanSet.RESERVED), certain ? perhaps : VlanSet.NONE, perhaps, designed);
  }

  /** What the role wants tagged and the list does not let through. */
  VlanSet notAllowed(VlanSet wanted) {
    return wanted.minus(VlanSet.RESERVED).minus(allowed);
  }

  /** What the role wants tagged and the port sends untagged, where no native rule says so. */
  VlanSet untaggedInstead(VlanSet wanted) {
    return designedNative.isEmpty() ? wanted.and(allowed).and(untagged) : VlanSet.NONE;
  }

  /** The same, for certain or perhaps. */
  VlanSet perhapsUntaggedInstead(VlanSet wanted) {
    return designedNative.isEmpty() ? wanted.and(allowed).and(perhapsUntagged) : VlanSet.NONE;
  }

  /** What is let through tagged, for certain, beyond the wanted and the tolerated. */
  VlanSet extra(VlanSet wanted, VlanSet mayCarry) {
    return perhapsExtra(wanted, mayCarry).minus(perhapsUntagged);
  }

  /** The same, for certain or perhaps. */
  VlanSet perhapsExtra(VlanSet wanted, VlanSet mayCarry) {
    return allowed.minus(untagged).minus(designedNative).minus(wanted).minus(mayCarry);
  }

  /** The setting, native VLAN or its tagging, that leaves open what is untagged. */
  static Setting<?> openNative(PortCase port) {
    Setting<VlanId> found = port.get(Keys.NATIVE_VLAN);
    return found.isDecided() ? port.get(Keys.NATIVE_TAGGING) : found;
  }

  private static VlanSet only(VlanId id) {
    return VlanSet.of(id.number());
  }
}
