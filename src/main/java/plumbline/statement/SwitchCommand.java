package plumbline.statement;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import plumbline.port.PortNames;
import plumbline.vlan.VlanSet;

/** Commands outside ports: the whole switch, its VLANs and its spanning tree. */
public sealed interface SwitchCommand extends Command {
  /** Names the switch. */
  record Hostname(Optional<String> name) implements SwitchCommand {}

  /**
   * Opens ports; with {@link Form#NO} and {@link Form#DEFAULT} undoes whole stanzas.
   *
   * @param operand as spelled, blanks trimmed
   * @param ports what the operand names
   */
  record Interface(String operand, PortNames.Reading ports) implements SwitchCommand {}

  /**
   * Opens a block that this program does not read (line, router, class-map, ...).
   *
   * @param keyword its first keyword, in full
   */
  record OtherBlock(String keyword) implements SwitchCommand {}

  /** Declares VLANs and opens their stanza; with {@link Form#NO} removes them. */
  record Vlans(VlanSet vlans) implements SwitchCommand {}

  /** Opens the block that lists VLANs one a line. */
  record VlanDatabaseBlock() implements SwitchCommand {}

  /**
   * Declares one or more VLANs inside that block.
   *
   * @param vlans which
   * @param name given name
   * @param suspended whether the line suspends them
   */
  record DatabaseVlans(VlanSet vlans, Optional<String> name, boolean suspended)
      implements SwitchCommand {}

  /** Names the open VLANs. */
  record VlanName(Optional<String> name) implements SwitchCommand {}

  /** Sets the open VLANs' state: true for active, false for suspended. */
  record VlanState(Optional<Boolean> active) implements SwitchCommand {}

  /** Shuts the open VLANs on this switch. */
  record VlanShutdown() implements SwitchCommand {}

  /** Role in the protocol that spreads the VLAN list between switches. */
  record VlanSpreading(Optional<Mode> mode) implements SwitchCommand {
    /** The roles. */
    public enum Mode {
      /** Owns the list. */
      SERVER,
      /** Takes the list from a server. */
      CLIENT,
      /** Keeps a list of its own and passes messages on. */
      TRANSPARENT,
      /** Keeps a list of its own. */
      OFF
    }
  }

  /** Domain of that protocol. */
  record VlanSpreadingDomain(Optional<String> name) implements SwitchCommand {}

  /** Dynamic pruning of trunks by that protocol. */
  record VlanSpreadingPruning() implements SwitchCommand {}

  /** Tags the native VLAN on every trunk. */
  record NativeTaggingDefault() implements SwitchCommand {}

  /**
   * Puts an access map on VLANs: a filter of all that is switched in them or routed out of or into
   * them.
   *
   * @param map the map; empty where a negation leaves it out
   * @param vlans which; empty where a negation leaves them out and means all of the map
   */
  record VlanFilter(Optional<String> map, Optional<VlanSet> vlans) implements SwitchCommand {}

  /** Puts a packet filter on the open VLANs, in dialects that say so in the VLAN's stanza. */
  record VlanStanzaFilter(Optional<String> operands) implements SwitchCommand {}

  /** Spanning-tree protocol in use. */
  record TreeMode(Optional<Mode> mode) implements SwitchCommand {
    /** The protocols. */
    public enum Mode {
      /** One tree per VLAN. */
      PVST,
      /** One rapid tree per VLAN. */
      RAPID_PVST,
      /** Multiple spanning tree (IEEE 802.1Q). */
      MST,
      /** One rapid tree (IEEE 802.1Q). */
      RSTP,
      /** One tree (IEEE 802.1D-1998). */
      STP,
      /** None. */
      NONE;

      @Override
      public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
      }
    }
  }

  /** Turns spanning tree on for the whole switch; with {@link Form#NO} off. */
  record TreeEnable() implements SwitchCommand {}

  /** Turns the tree of some VLANs on; with {@link Form#NO} off. */
  record TreeOfVlans(VlanSet vlans) implements SwitchCommand {}

  /**
   * Bridge priority.
   *
   * @param scope which trees
   * @param priority 0..61440
   */
  record TreePriority(TreeScope scope, Optional<Integer> priority) implements SwitchCommand {}

  /**
   * Asks for the root's place.
   *
   * @param scope which trees
   * @param primary true for root, false for the second place
   */
  record TreeRoot(TreeScope scope, boolean primary) implements SwitchCommand {}

  /** Path-cost method: true for 32-bit costs, false for 16-bit. */
  record PathCost(Optional<Boolean> isLong) implements SwitchCommand {}

  /** Opens the region block. */
  record RegionBlock() implements SwitchCommand {}

  /** Region name. */
  record RegionName(Optional<String> name) implements SwitchCommand {}

  /** Region revision, 0..65535. */
  record RegionRevision(Optional<Integer> revision) implements SwitchCommand {}

  /** VLANs of an instance, 0..4094. */
  record RegionInstance(int instance, Optional<VlanSet> vlans) implements SwitchCommand {}

  /** Fast-start of ports that say nothing themselves. */
  record FastStartDefault(PortCommand.FastStart.Kind kind) implements SwitchCommand {}

  /** BPDU guard of ports whose fast-start is in effect. */
  record BpduGuardDefault() implements SwitchCommand {}

  /** BPDU filter of fast-start ports. */
  record BpduFilterDefault() implements SwitchCommand {}

  /** Loop guard of all ports. */
  record LoopGuardDefault() implements SwitchCommand {}

  /** Unidirectional-link detection of all fibre ports. */
  record UdldDefault() implements SwitchCommand {}

  /** Turns QoS on: without it marking lines have no effect in some dialects. */
  record QosEnable() implements SwitchCommand {}

  /**
   * Frame size of the whole switch, in octets.
   *
   * @param kind which ports or packets it is about
   * @param octets the size
   */
  record SystemMtu(Kind kind, Optional<Integer> octets) implements SwitchCommand {
    /** What the size is about. */
    public enum Kind {
      /** All ports. */
      ALL,
      /** Ports of 1 Gb/s and more. */
      JUMBO,
      /** Routed packets. */
      ROUTING
    }
  }

  /** Turns routing between VLANs on. */
  record IpRouting() implements SwitchCommand {}

  /** Ports are switched unless they say otherwise; with {@link Form#NO} routed. */
  record SwitchedDefault() implements SwitchCommand {}

  /** Ports are shut unless they say otherwise; with {@link Form#NO} open. */
  record ShutDefault() implements SwitchCommand {}

  /**
   * The trees that a spanning-tree line is about.
   *
   * @param vlans VLANs, in the per-VLAN modes; empty in the other case
   * @param instances instances 0..4094, in multiple spanning tree; empty in the other case
   */
  record TreeScope(VlanSet vlans, List<Integer> instances) {
    /** Every tree of the port or switch. */
    public static final TreeScope ALL = new TreeScope(VlanSet.NONE, List.of());

    /** Copies the instances. */
    public TreeScope {
      instances = List.copyOf(instances);
    }
  }
}
