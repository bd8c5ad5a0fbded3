package plumbline.setting;

import java.util.List;
import plumbline.vlan.VlanId;
import plumbline.vlan.VlanSet;

/** Every setting of a port that this program computes. */
public final class Keys {
  /** What the port does with frames. */
  public static final Key<PortMode> MODE = new Key<>("mode", PortMode.class);

  /** Whether the port is administratively shut. */
  public static final Key<Boolean> SHUT = new Key<>("shut", Boolean.class);

  /** VLAN of untagged frames while the port is an access port. */
  public static final Key<VlanId> ACCESS_VLAN = new Key<>("access-vlan", VlanId.class);

  /** How a phone tags; absent when no voice line stands. */
  public static final Key<VoiceVlan> VOICE_VLAN = new Key<>("voice-vlan", VoiceVlan.class);

  /** VLAN of untagged frames while the port trunks. */
  public static final Key<VlanId> NATIVE_VLAN = new Key<>("native-vlan", VlanId.class);

  /** Whether the native VLAN is sent tagged and untagged frames are dropped. */
  public static final Key<Boolean> NATIVE_TAGGING = new Key<>("native-tagging", Boolean.class);

  /** The trunk's allowed list, whatever the mode. */
  public static final Key<VlanSet> ALLOWED = new Key<>("allowed", VlanSet.class);

  /**
   * The allowed list as it is if its base is the default; only where {@link #ALLOWED} is not known
   * for want of that base, and so none of {@link #ALL}.
   */
  public static final Key<VlanSet> ALLOWED_FROM_DEFAULT =
      new Key<>("allowed-from-default", VlanSet.class);

  /** The VLANs that frames of cross this port, all things considered. */
  public static final Key<Carried> CARRIED = new Key<>("carried", Carried.class);

  /** Whether trunk negotiation frames are sent: true while negotiation is open. */
  public static final Key<Boolean> NEGOTIATE = new Key<>("negotiate", Boolean.class);

  /**
   * Whether a port whose mode is negotiated asks the other end for a trunk, or only answers; absent
   * in a fixed mode. Both ends together decide the mode, so it is no setting that reports list.
   */
  public static final Key<Boolean> ASKS_FOR_TRUNK = new Key<>("asks-for-trunk", Boolean.class);

  /** Edge fast-start (IEEE 802.1Q adminEdge). */
  public static final Key<Effect> FAST_START = new Key<>("fast-start", Effect.class);

  /** Disables the port when a BPDU arrives. */
  public static final Key<Effect> BPDU_GUARD = new Key<>("bpdu-guard", Effect.class);

  /** Stops BPDUs both ways: spanning tree is off on this port. */
  public static final Key<Effect> BPDU_FILTER = new Key<>("bpdu-filter", Effect.class);

  /** The port may not become a root port (IEEE 802.1Q restrictedRole). */
  public static final Key<Effect> ROOT_GUARD = new Key<>("root-guard", Effect.class);

  /** The port blocks when BPDUs cease. */
  public static final Key<Effect> LOOP_GUARD = new Key<>("loop-guard", Effect.class);

  /** Unidirectional-link detection. */
  public static final Key<Effect> UDLD = new Key<>("udld", Effect.class);

  /** Path cost that a line about the port sets; absent when computed from the speed. */
  public static final Key<Long> STP_COST = new Key<>("cost", Long.class);

  /** Port priority that a line about the port sets. */
  public static final Key<Integer> STP_PORT_PRIORITY = new Key<>("port-priority", Integer.class);

  /** Path cost by tree, with the lines about one VLAN or one instance; none of {@link #ALL}. */
  public static final Key<TreeNumbers> COST_BY_TREE = new Key<>("cost-by-tree", TreeNumbers.class);

  /** Port priority by tree, as {@link #COST_BY_TREE}; none of {@link #ALL}. */
  public static final Key<TreeNumbers> PORT_PRIORITY_BY_TREE =
      new Key<>("port-priority-by-tree", TreeNumbers.class);

  /** Configured spanning-tree link type: {@code point-to-point} or {@code shared}. */
  public static final Key<String> LINK_TYPE = new Key<>("link-type", String.class);

  /** The bundle that the port is a member of. */
  public static final Key<Bundle> BUNDLE = new Key<>("bundle", Bundle.class);

  /** How many members a bundle needs to stay up. */
  public static final Key<Integer> MIN_LINKS = new Key<>("min-links", Integer.class);

  /** Whether a member is out of its bundle because its own lines differ from the bundle's. */
  public static final Key<Boolean> SUSPENDED = new Key<>("suspended", Boolean.class);

  /** Number under which two switches offer this bundle together, or {@code peer-link}. */
  public static final Key<String> MULTI_CHASSIS = new Key<>("multi-chassis", String.class);

  /** Speed in Mb/s, or {@code auto}. */
  public static final Key<String> SPEED = new Key<>("speed", String.class);

  /** Duplex: {@code full}, {@code half} or {@code auto}. */
  public static final Key<String> DUPLEX = new Key<>("duplex", String.class);

  /** Largest frame payload in octets. */
  public static final Key<Integer> MTU = new Key<>("mtu", Integer.class);

  /** Marking that is trusted: {@code cos}, {@code dscp} or {@code none}. */
  public static final Key<String> QOS_TRUST = new Key<>("qos-trust", String.class);

  /** Name of the QoS policy for received frames. */
  public static final Key<String> POLICY_IN = new Key<>("policy-in", String.class);

  /** Name of the QoS policy for sent frames. */
  public static final Key<String> POLICY_OUT = new Key<>("policy-out", String.class);

  /** Whether storm control limits some kind of traffic. */
  public static final Key<Boolean> STORM_CONTROL = new Key<>("storm-control", Boolean.class);

  /** Whether the number of addresses behind the port is limited. */
  public static final Key<Boolean> PORT_SECURITY = new Key<>("port-security", Boolean.class);

  /** Whether address-assignment answers are trusted from this port. */
  public static final Key<Boolean> SNOOPING_TRUST = new Key<>("snooping-trust", Boolean.class);

  /** Whether address-resolution answers are trusted from this port. */
  public static final Key<Boolean> INSPECTION_TRUST = new Key<>("inspection-trust", Boolean.class);

  /** The description, secrets masked; absent when none. */
  public static final Key<String> DESCRIPTION = new Key<>("description", String.class);

  /** All that reports list, in their order. */
  public static final List<Key<?>> ALL =
      List.of(
          MODE,
          SHUT,
          ACCESS_VLAN,
          VOICE_VLAN,
          NATIVE_VLAN,
          NATIVE_TAGGING,
          ALLOWED,
          CARRIED,
          NEGOTIATE,
          FAST_START,
          BPDU_GUARD,
          BPDU_FILTER,
          ROOT_GUARD,
          LOOP_GUARD,
          UDLD,
          STP_COST,
          STP_PORT_PRIORITY,
          LINK_TYPE,
          BUNDLE,
          MIN_LINKS,
          SUSPENDED,
          MULTI_CHASSIS,
          SPEED,
          DUPLEX,
          MTU,
          QOS_TRUST,
          POLICY_IN,
          POLICY_OUT,
          STORM_CONTROL,
          PORT_SECURITY,
          SNOOPING_TRUST,
          INSPECTION_TRUST,
          DESCRIPTION);

  private Keys() {}
}
