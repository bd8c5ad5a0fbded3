package plumbline.rules;

import java.util.Optional;
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
 * @param untagged the VLAN that is sent untagged, if any
 * @param designedNative the native VLAN that the role names
 */
record Trunk(VlanSet allowed, VlanSet untagged, VlanSet designedNative) {
  /** The trunk of a port whose allowed list is known. */
  static Trunk of(PortCase port, VlanSet allowed) {
    boolean tagsNative = port.get(Keys.NATIVE_TAGGING).is(true);
    VlanSet untagged =
        tagsNative
            ? VlanSet.NONE
            : port.get(Keys.NATIVE_VLAN).value().map(Trunk::only).orElse(VlanSet.NONE);
    VlanSet designed =
        port.port()
            .role()
            .value(RoleKeys.NATIVE)
            .map(DesignVlan::id)
            .map(Trunk::only)
            .orElse(VlanSet.NONE);
    return new Trunk(allowed.minus(VlanSet.RESERVED), untagged, designed);
  }

  /** What the role wants tagged and the list does not let through. */
  VlanSet notAllowed(VlanSet wanted) {
    return wanted.minus(VlanSet.RESERVED).minus(allowed);
  }

  /** What the role wants tagged and the port sends untagged, where no native rule says so. */
  VlanSet untaggedInstead(VlanSet wanted) {
    return designedNative.isEmpty() ? wanted.and(allowed).and(untagged) : VlanSet.NONE;
  }

  /** What is let through tagged beyond the wanted and the tolerated. */
  VlanSet extra(VlanSet wanted, VlanSet mayCarry) {
    return allowed.minus(untagged).minus(designedNative).minus(wanted).minus(mayCarry);
  }

  /** The first setting, native VLAN or its tagging, that the text leaves open. */
  static Optional<Setting<?>> openNative(PortCase port) {
    if (!port.get(Keys.NATIVE_VLAN).isDecided()) {
      return Optional.of(port.get(Keys.NATIVE_VLAN));
    }
    return port.get(Keys.NATIVE_TAGGING).isDecided()
        ? Optional.empty()
        : Optional.of(port.get(Keys.NATIVE_TAGGING));
  }

  private static VlanSet only(VlanId id) {
    return VlanSet.of(id.number());
  }
}
