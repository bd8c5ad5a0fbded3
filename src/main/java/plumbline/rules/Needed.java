package plumbline.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import plumbline.design.DesignGateway;
import plumbline.vlan.VlanId;

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
                port.role()
                    .neededVlans()
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

  private static void add(SortedMap<VlanId, List<String>> needed, VlanId vlan, String by) {
    needed.computeIfAbsent(vlan, any -> new ArrayList<>()).add(by);
  }
}
