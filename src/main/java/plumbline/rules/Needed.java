package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.design.DesignGateway;
import plumbline.design.DesignVlan;
import plumbline.design.Role;
import plumbline.design.RoleKeys;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Lists the VLANs that covered ports and gateways of a switch must carry, and which ones. */
final class Needed {
  private Needed() {}

  /** Who needs which VLAN, as objects of a sentence, in the order of ports, gateways last. */
  static SortedMap<VlanId, List<String>> on(SwitchCase device) {
    SortedMap<VlanId, List<String>> needed = new TreeMap<>();
    device.ports().stream()
        .filter(PortCase::isSwitching)
        .map(PortCase::port)
        .forEach(
            port ->
                vlans(port.role())
                    .ids()
                    .forEach(id -> add(needed, new VlanId(id), Words.behind(port))));
    String name = device.designed().name();
    for (DesignGateway gateway : device.design().gateways().values()) {
      boolean own = gateway.outside().isEmpty() && gateway.name().equals(name);
      boolean behind = gateway.outside().stream().anyMatch(port -> port.switchName().equals(name));
      if (own || behind) {
        String by = own ? "its gateway" : "the gateway " + gateway.name();
        gateway.vlans().forEach(served -> add(needed, served.vlan().id(), by));
      }
    }
    return needed;
  }

  /**
   * The VLANs that a port of the role must carry. An unused native VLAN need not exist: its frames
   * are to be dropped.
   */
  static VlanSet vlans(Role role) {
    VlanSet vlans = role.value(RoleKeys.TAGGED).orElse(VlanSet.NONE);
    for (var key : List.of(RoleKeys.ACCESS, RoleKeys.VOICE, RoleKeys.NATIVE)) {
      vlans =
          vlans.plus(
              role.value(key)
                  .filter(vlan -> !vlan.unused())
                  .map(DesignVlan::id)
                  .map(id -> VlanSet.of(id.number()))
                  .orElse(VlanSet.NONE));
    }
    return vlans.minus(VlanSet.RESERVED);
  }

  private static void add(SortedMap<VlanId, List<String>> needed, VlanId vlan, String by) {
    needed.computeIfAbsent(vlan, any -> new ArrayList<>()).add(by);
  }
}
