package plumbline.design;

import java.util.List;
import java.util.Locale;
import plumbline.setting.PortMode;
import plumbline.vlan.VlanSet;

/** Everything that a role can ask of a port. */
public final class RoleKeys {
  /** Access, trunk or routed. */
  public static final RoleKey<PortMode> MODE = new RoleKey<>("mode", PortMode.class);

  /** Access VLAN. */
  public static final RoleKey<DesignVlan> ACCESS = new RoleKey<>("access", DesignVlan.class);

  /** Voice VLAN. */
  public static final RoleKey<DesignVlan> VOICE = new RoleKey<>("voice", DesignVlan.class);

  /** Native VLAN of a trunk. */
  public static final RoleKey<DesignVlan> NATIVE = new RoleKey<>("native", DesignVlan.class);

  /** VLANs that a trunk must carry tagged, exactly. */
  public static final RoleKey<VlanSet> TAGGED = new RoleKey<>("tagged", VlanSet.class);

  /** VLANs that it may carry besides. */
  public static final RoleKey<VlanSet> MAY_CARRY = new RoleKey<>("may-carry", VlanSet.class);

  /** Edge fast-start. */
  public static final RoleKey<Boolean> FAST_START = new RoleKey<>("fast-start", Boolean.class);

  /** BPDU guard. */
  public static final RoleKey<Boolean> BPDU_GUARD = new RoleKey<>("bpdu-guard", Boolean.class);

  /** BPDU filter. */
  public static final RoleKey<Boolean> BPDU_FILTER = new RoleKey<>("bpdu-filter", Boolean.class);

  /** Root guard. */
  public static final RoleKey<Boolean> ROOT_GUARD = new RoleKey<>("root-guard", Boolean.class);

  /** Loop guard. */
  public static final RoleKey<Boolean> LOOP_GUARD = new RoleKey<>("loop-guard", Boolean.class);

  /** Unidirectional-link detection. */
  public static final RoleKey<Boolean> UDLD = new RoleKey<>("udld", Boolean.class);

  /** How the port is bundled. */
  public static final RoleKey<BundleWish> BUNDLE = new RoleKey<>("bundle", BundleWish.class);

  /** Members that a bundle needs. */
  public static final RoleKey<Integer> MIN_LINKS = new RoleKey<>("min-links", Integer.class);

  /** Whether trunk negotiation may stay open. */
  public static final RoleKey<Boolean> NEGOTIATE = new RoleKey<>("negotiate", Boolean.class);

  /** Whether the native VLAN is tagged. */
  public static final RoleKey<Boolean> NATIVE_TAGGING =
      new RoleKey<>("native-tagging", Boolean.class);

  /** Trusted marking and policies. */
  public static final RoleKey<Qos> QOS = new RoleKey<>("qos", Qos.class);

  /** Speed in Mb/s, or {@code auto}. */
  public static final RoleKey<String> SPEED = new RoleKey<>("speed", String.class);

  /** {@code full}, {@code half} or {@code auto}. */
  public static final RoleKey<String> DUPLEX = new RoleKey<>("duplex", String.class);

  /** Frame payload in octets. */
  public static final RoleKey<Integer> MTU = new RoleKey<>("mtu", Integer.class);

  /** Storm control. */
  public static final RoleKey<Boolean> STORM_CONTROL =
      new RoleKey<>("storm-control", Boolean.class);

  /** Limit on the addresses behind the port. */
  public static final RoleKey<Boolean> PORT_SECURITY =
      new RoleKey<>("port-security", Boolean.class);

  /** Trust in address-assignment answers. */
  public static final RoleKey<Boolean> SNOOPING_TRUST =
      new RoleKey<>("snooping-trust", Boolean.class);

  /** Pattern that the description must match: {@code *} any text, {@code ?} one character. */
  public static final RoleKey<String> DESCRIPTION = new RoleKey<>("description", String.class);

  /** All of them, in the order in which documents list them. */
  public static final List<RoleKey<?>> ALL =
      List.of(
          MODE,
          ACCESS,
          VOICE,
          NATIVE,
          TAGGED,
          MAY_CARRY,
          FAST_START,
          BPDU_GUARD,
          BPDU_FILTER,
          ROOT_GUARD,
          LOOP_GUARD,
          UDLD,
          BUNDLE,
          MIN_LINKS,
          NEGOTIATE,
          NATIVE_TAGGING,
          QOS,
          SPEED,
          DUPLEX,
          MTU,
          STORM_CONTROL,
          PORT_SECURITY,
          SNOOPING_TRUST,
          DESCRIPTION);

  private RoleKeys() {}

  /** How a port is bundled. */
  public enum BundleWish {
    /** Not at all. */
    NONE,
    /** With LACP. */
    LACP,
    /** Without negotiation. */
    STATIC;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
