package plumbline.effective;

import java.util.List;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.setting.Evidence;
import plumbline.setting.Setting;
import plumbline.setting.Truth;
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
 * @param filtered whether a packet filter stands on it; undecided where one on its VLAN may do the
 *     same
 * @param redundant whether it has a first-hop redundancy group
 * @param groups first-hop redundancy groups, by kind and number
 * @param works whether it can route for the VLAN: not shut, with an address, its VLAN exists, is
 *     active and reaches an unshut port (unless it does not follow them), and the switch routes;
 *     where it does not, the evidence is what speaks against it
 * @param needs what it needs to work, one by one, in the order in which they are asked
 */
public record Gateway(
    VlanId vlan,
    PortName port,
    Evidence.Line header,
    Setting<List<String>> addresses,
    Setting<Boolean> shut,
    Setting<Boolean> autostate,
    Setting<Boolean> filtered,
    Setting<Boolean> redundant,
    List<Group> groups,
    Setting<Boolean> works,
    List<Need> needs) {
  /** Copies the lists. */
  public Gateway {
    groups = List.copyOf(groups);
    needs = List.copyOf(needs);
  }

  /** The same gateway with the answer to whether it works. */
  Gateway working(Setting<Boolean> answer, List<Need> itsNeeds) {
    return new Gateway(
        vlan, port, header, addresses, shut, autostate, filtered, redundant, groups, answer,
        itsNeeds);
  }

  /** Whether one of the things that it needs is so; true for what it does not need. */
  public Truth has(Need.Kind kind) {
    return need(kind).map(Need::holds).orElse(Truth.YES);
  }

  /**
   * Whether hosts find it at an address: its own, or the virtual one of a group.
   *
   * @param wanted the address without a mask
   */
  public Truth answersTo(String wanted) {
    boolean own =
        addresses.value().stream()
            .flatMap(List::stream)
            .anyMatch(text -> host(text).equalsIgnoreCase(wanted));
    boolean virtual =
        groups.stream()
            .flatMap(group -> group.address().value().stream())
            .anyMatch(text -> host(text).equalsIgnoreCase(wanted));
    if (own || virtual) {
      return Truth.YES;
    }
    boolean open =
        !addresses.isDecided() || groups.stream().anyMatch(group -> !group.address().isDecided());
    return open ? Truth.UNKNOWN : Truth.NO;
  }

  private static String host(String address) {
    return address.split("[ /]", 2)[0];
  }

  /** One of the things that it needs, if it needs it. */
  public Optional<Need> need(Need.Kind kind) {
    return needs.stream().filter(need -> need.kind() == kind).findFirst();
  }

  /**
   * One thing that a gateway needs to work.
   *
   * @param kind what
   * @param holds whether it is so
   * @param why why that cannot be told; empty where it can
   * @param evidence what it rests on
   */
  public record Need(Kind kind, Truth holds, String why, List<Evidence> evidence) {
    /** Copies the evidence. */
    public Need {
      evidence = List.copyOf(evidence);
    }

    /** What a gateway may need. */
    public enum Kind {
      /** Its interface is not shut. */
      OPEN,
      /** It has an address. */
      ADDRESS,
      /** The switch routes between VLANs. */
      ROUTING,
      /** The port of its sub-interface is not shut. */
      PARENT,
      /** Its VLAN exists and is active. */
      VLAN,
      /** An open port carries its VLAN. */
      PORT
    }
  }

  /**
   * A first-hop redundancy group.
   *
   * @param kind protocol
   * @param id group number; 0 where the protocol has none
   * @param version protocol version; absent where the protocol has one only
   * @param address virtual address; absent where learned or not set
   * @param learns whether it takes the virtual address from the other end
   * @param priority 1..255; absent where the protocol has none
   * @param preempt whether a higher priority takes over; absent where the protocol has none
   * @param tracks whether something lowers the priority
   */
  public record Group(
      PortCommand.Redundancy.Kind kind,
      int id,
      Setting<Integer> version,
      Setting<String> address,
      boolean learns,
      Setting<Integer> priority,
      Setting<Boolean> preempt,
      boolean tracks) {}
}
