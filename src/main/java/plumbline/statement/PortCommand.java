package plumbline.statement;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.port.PortName;
import plumbline.setting.Bundle;
import plumbline.setting.VoiceVlan;
import plumbline.statement.SwitchCommand.TreeScope;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Commands inside a port. */
public sealed interface PortCommand extends Command {
  /** Free text, secrets masked. */
  record Description(Optional<String> text) implements PortCommand {}

  /** Administratively down. */
  record Shutdown() implements PortCommand {}

  /** Switched, not routed ({@code switchport} alone; {@code no routing} in some dialects). */
  record Switched() implements PortCommand {}

  /** Mode of a switched port. */
  record Mode(Optional<Kind> kind) implements PortCommand {
    /** The modes. */
    public enum Kind {
      /** Access. */
      ACCESS,
      /** Trunk. */
      TRUNK,
      /** Negotiated, waiting. */
      DYNAMIC_AUTO,
      /** Negotiated, asking. */
      DYNAMIC_DESIRABLE,
      /** A mode that is not modelled: private VLANs, tunnels, general, hybrid. */
      OTHER
    }
  }

  /** Stops trunk negotiation. */
  record Nonegotiate() implements PortCommand {}

  /**
   * Access VLAN.
   *
   * @param vlan which
   * @param setsMode true in spellings that make the port an access port by themselves
   */
  record AccessVlan(Optional<VlanId> vlan, boolean setsMode) implements PortCommand {}

  /** Voice VLAN; empty in the set form means {@code none}. */
  record Voice(Optional<VoiceVlan> voice) implements PortCommand {}

  /**
   * Native VLAN.
   *
   * @param vlan which
   * @param setsMode true in spellings that make the port a trunk by themselves
   * @param tagged true where the line also tags it
   */
  record NativeVlan(Optional<VlanId> vlan, boolean setsMode, boolean tagged)
      implements PortCommand {}

  /** Tags the native VLAN on this trunk. */
  record NativeTagging() implements PortCommand {}

  /**
   * Allowed VLANs of a trunk.
   *
   * @param change how the list changes
   * @param vlans the operand; empty for {@link ListChange#ALL}, {@link ListChange#NONE} and bare
   *     negations
   * @param setsMode true in spellings that make the port a trunk by themselves
   */
  record Allowed(ListChange change, VlanSet vlans, boolean setsMode) implements PortCommand {}

  /**
   * VLANs of a trunk that may be pruned dynamically.
   *
   * @param change how the list changes
   * @param vlans the operand, as in {@link Allowed}
   */
  record Pruning(ListChange change, VlanSet vlans) implements PortCommand {}

  /** Tagging protocol of a trunk, such as {@code dot1q}. */
  record TrunkEncapsulation(Optional<String> protocol) implements PortCommand {}

  /**
   * Changes which VLANs the port carries in a way this program does not model.
   *
   * @param keywords the statement's leading keywords, in full
   */
  record Unmodelled(String keywords) implements PortCommand {}

  /**
   * Edge fast-start.
   *
   * @param kind what is asked for
   * @param reachesTrunks true in spellings that have no trunk keyword and work on trunks too
   */
  record FastStart(Optional<Kind> kind, boolean reachesTrunks) implements PortCommand {
    /** What is asked for. */
    public enum Kind {
      /** Fast-start while the port does not trunk. */
      EDGE,
      /** Fast-start, trunking or not. */
      EDGE_TRUNK,
      /** Bridge assurance: the port blocks when it hears no BPDUs. */
      NETWORK,
      /** Plain spanning tree. */
      NORMAL,
      /** Plain spanning tree, whatever the global default. */
      DISABLE
    }
  }

  /** BPDU guard: true for {@code enable}, false for {@code disable}. */
  record BpduGuard(Optional<Boolean> enable) implements PortCommand {}

  /** BPDU filter: true for {@code enable}, false for {@code disable}. */
  record BpduFilter(Optional<Boolean> enable) implements PortCommand {}

  /** Root or loop guard. */
  record Guard(Optional<Kind> kind) implements PortCommand {
    /** Which guard. */
    public enum Kind {
      /** Root guard. */
      ROOT,
      /** Loop guard. */
      LOOP,
      /** Neither. */
      NONE
    }
  }

  /** Unidirectional-link detection: false where the line disables it. */
  record Udld(boolean enable) implements PortCommand {}

  /** Path cost, 1..200000000. */
  record TreeCost(TreeScope scope, Optional<Long> cost) implements PortCommand {}

  /** Port priority, 0..240. */
  record TreePortPriority(TreeScope scope, Optional<Integer> priority) implements PortCommand {}

  /** Spanning tree of one port; with {@link Form#NO} off: the port then drops BPDUs. */
  record TreeOnPort() implements PortCommand {}

  /** Link type: {@code point-to-point}, {@code shared} or {@code auto}. */
  record LinkType(Optional<String> type) implements PortCommand {}

  /** Membership of a bundle; without a mode, static. */
  record ChannelGroup(Optional<Integer> id, Optional<Bundle.Mode> mode) implements PortCommand {}

  /** How a bundle forms, in dialects that say so inside the bundle and not at its members. */
  record BundleMode(Optional<Bundle.Mode> mode) implements PortCommand {}

  /** Members that a bundle needs. */
  record MinLinks(Optional<Integer> count) implements PortCommand {}

  /** Number under which two switches offer this bundle together, or {@code peer-link}. */
  record MultiChassis(Optional<String> id) implements PortCommand {}

  /**
   * Speed in Mb/s, {@code auto}, or {@link #OWN}: the only one that the port's optics have, without
   * negotiation of the link (IEEE 802.3 clause 37).
   */
  record Speed(Optional<String> speed) implements PortCommand {
    /** No number is said, and the link is not negotiated. */
    public static final String OWN = "nonegotiate";
  }

  /** {@code full}, {@code half} or {@code auto}. */
  record Duplex(Optional<String> duplex) implements PortCommand {}

  /** Frame payload in octets. */
  record Mtu(Optional<Integer> octets) implements PortCommand {}

  /**
   * Trusted marking.
   *
   * @param marking {@code cos}, {@code dscp}, {@code ip-precedence} or {@code device}
   * @param needsEnable true in the spelling of families that trust nothing while QoS is off
   */
  record QosTrust(Optional<String> marking, boolean needsEnable) implements PortCommand {}

  /**
   * QoS policy.
   *
   * @param input true for received frames
   * @param name the policy
   */
  record ServicePolicy(boolean input, Optional<String> name) implements PortCommand {}

  /** Limits broadcast, multicast or unicast traffic; other storm lines are harmless. */
  record StormControl(String traffic) implements PortCommand {}

  /** Limits the addresses behind the port; its detail lines are harmless. */
  record PortSecurity() implements PortCommand {}

  /** Trusts address-assignment answers. */
  record SnoopingTrust() implements PortCommand {}

  /** Trusts address-resolution answers. */
  record InspectionTrust() implements PortCommand {}

  /**
   * Address of a routed port or VLAN interface.
   *
   * @param version 4 or 6
   * @param address with its prefix length where written so, {@code dhcp}, or empty
   * @param mask dotted mask where written so
   * @param secondary whether it is a further address
   */
  record Address(int version, Optional<String> address, Optional<String> mask, boolean secondary)
      implements PortCommand {}

  /**
   * Answers under the address of another interface.
   *
   * @param lender that interface; empty where a negation leaves it out
   */
  record Unnumbered(Optional<PortName> lender) implements PortCommand {}

  /**
   * One line of a first-hop redundancy group. A line with {@link Attribute#OTHER} and no value is
   * the group's header: it opens the group where a dialect has a block for it, and with {@link
   * Form#NO} it removes the whole group. An anycast address without value is the port's own.
   *
   * @param kind protocol
   * @param group 0..4095; empty where the line is about all groups
   * @param attribute what the line sets
   * @param value its operand as text: an address, with {@code secondary} behind it where it is a
   *     further one; a number; the keyword of a line without bearing; or empty
   */
  record Redundancy(Kind kind, Optional<Integer> group, Attribute attribute, Optional<String> value)
      implements PortCommand {
    /** The protocols, by their config keyword. */
    public enum Kind {
      /** RFC 5798, RFC 9568. */
      VRRP,
      /** A proprietary one. */
      STANDBY,
      /** A proprietary one that shares load. */
      GLBP,
      /** One address, alive on all switches at once. */
      ANYCAST;

      @Override
      public String toString() {
        return name().toLowerCase(Locale.ROOT);
      }
    }

    /** What a line sets. */
    public enum Attribute {
      /** Virtual address. */
      ADDRESS,
      /** Priority, 1..255. */
      PRIORITY,
      /** Whether a higher priority takes over. */
      PREEMPT,
      /** Protocol version. */
      VERSION,
      /** What lowers the priority. */
      TRACK,
      /** Timers, names, authentication: without bearing on the pair. */
      OTHER
    }
  }

  /**
   * Packet filter.
   *
   * @param name the list's name
   * @param input true for received packets
   */
  record AccessGroup(Optional<String> name, boolean input) implements PortCommand {}

  /**
   * 802.1Q tag of a sub-interface.
   *
   * @param vlan which
   * @param untagged true where the sub-interface takes untagged frames
   */
  record SubinterfaceTag(Optional<VlanId> vlan, boolean untagged) implements PortCommand {}

  /**
   * Takes lines that stand elsewhere, under a name.
   *
   * @param keyword what holds them: {@code template}, {@code port-profile} or {@code profile}
   * @param names the names; empty where a negation leaves them out
   */
  record Inherit(String keyword, List<String> names) implements PortCommand {
    /** Copies the names. */
    public Inherit {
      names = List.copyOf(names);
    }
  }

  /** A VLAN interface follows its VLAN's ports up and down. */
  record Autostate() implements PortCommand {}

  /** The VLAN's name, in dialects that write it inside the VLAN interface. */
  record InterfaceVlanName(Optional<String> name) implements PortCommand {}
}
