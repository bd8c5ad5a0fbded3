package plumbline.window;

import java.util.Optional;
import plumbline.port.PortName;
import plumbline.setting.Key;
import plumbline.setting.Setting;
import plumbline.vlan.VlanSet;

/**
 * One thing that can be compared between two texts of a switch.
 *
 * @param port the port that it is about; empty for the whole switch
 * @param setting the trade's word, lower case with hyphens
 * @param key the key of the setting, where it is one of a port
 * @param vlans the VLANs that it is about; none where it is about none
 * @param before its value before the window
 * @param after its value after the window
 */
record Point(
    Optional<PortName> port,
    String setting,
    Optional<Key<?>> key,
    VlanSet vlans,
    Setting<?> before,
    Setting<?> after) {
  /** Whether a port is there. */
  static final String PORT = "port";

  /** Whether a VLAN is in the list. */
  static final String VLAN = "vlan";

  /** Whether a VLAN is active. */
  static final String VLAN_STATE = "vlan-state";

  /** The name of a VLAN. */
  static final String VLAN_NAME = "vlan-name";

  /** Whether the switch has an interface with an address for a VLAN. */
  static final String GATEWAY = "gateway";

  /** The addresses of that interface. */
  static final String ADDRESSES = "addresses";

  /** Whether that interface can route. */
  static final String GATEWAY_WORKS = "gateway-works";

  /** Whether the switch routes between VLANs. */
  static final String ROUTING = "ip-routing";

  /** The spanning-tree protocol. */
  static final String TREE_MODE = "spanning-tree-mode";

  /** The VLANs whose tree is turned off. */
  static final String TREE_OFF = "spanning-tree-off";

  /** How path costs are computed. */
  static final String PATH_COST = "path-cost-method";

  /** The bridge priority. */
  static final String PRIORITY = "bridge-priority";

  /** The name of the MST region. */
  static final String REGION_NAME = "mst-name";

  /** The revision of the MST region. */
  static final String REGION_REVISION = "mst-revision";

  /** The VLANs of an MST instance, its number behind a blank. */
  static final String REGION_INSTANCE = "mst-instance";

  /** Something of a port that is no key. */
  static Point ofPort(PortName port, String setting, Setting<?> before, Setting<?> after) {
    return new Point(Optional.of(port), setting, Optional.empty(), VlanSet.NONE, before, after);
  }

  /** A key of a port. */
  static Point ofKey(PortName port, Key<?> key, Setting<?> before, Setting<?> after) {
    return new Point(Optional.of(port), key.name(), Optional.of(key), VlanSet.NONE, before, after);
  }

  /** Something of the whole switch. */
  static Point ofSwitch(String setting, VlanSet vlans, Setting<?> before, Setting<?> after) {
    return new Point(Optional.empty(), setting, Optional.empty(), vlans, before, after);
  }

  /** Whether the value is decided on both sides. */
  boolean isDecided() {
    return before.isDecided() && after.isDecided();
  }
}
