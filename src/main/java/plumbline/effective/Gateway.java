package plumbline.effective;

import java.util.List;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.statement.PortCommand;
import plumbline.vlan.VlanId;

/**
 * An address of the switch in a VLAN: on its VLAN interface or on a sub-interface with its tag.
 *
 * @param vlan the VLAN
 * @param port the interface
 * @param header the line that opens the interface
 * @param addresses addresses with their masks as written, the first one first; absent where none is
 *     set
 * @param shut whether the interface is shut
 * @param autostate whether it follows the VLAN's ports up and down
 * @param filtered whether a packet filter stands on it
 * @param groups first-hop redundancy groups, by kind and number
 * @param works whether it can route for the VLAN: not shut, with an address, its VLAN exists, is
 *     active and reaches an unshut port (unless it does not follow them), and the switch routes;
 *     where it does not, the evidence is what speaks against it
 */
public record Gateway(
    VlanId vlan,
    PortName port,
    Evidence.Line header,
    Setting<List<String>> addresses,
    Setting<Boolean> shut,
    Setting<Boolean> autostate,
    Setting<Boolean> filtered,
    List<Group> groups,
    Setting<Boolean> works) {
  /** Copies the groups. */
  public Gateway {
    groups = List.copyOf(groups);
  }

  /** The same gateway with the answer to whether it works. */
  Gateway working(Setting<Boolean> answer) {
    return new Gateway(vlan, port, header, addresses, shut, autostate, filtered, groups, answer);
  }

  /**
   * A first-hop redundancy group.
   *
   * @param kind protocol
   * @param id group number; 0 where the protocol has none
   * @param version protocol version; absent where the protocol has one only
   * @param address virtual address; absent where learned or not set
   * @param priority 1..255; absent where the protocol has none
   * @param preempt whether a higher priority takes over; absent where the protocol has none
   * @param tracks whether something lowers the priority
   */
  public record Group(
      PortCommand.Redundancy.Kind kind,
      int id,
      Setting<Integer> version,
      Setting<String> address,
      Setting<Integer> priority,
      Setting<Boolean> preempt,
      boolean tracks) {}
}
