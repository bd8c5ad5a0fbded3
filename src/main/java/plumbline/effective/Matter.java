package plumbline.effective;

import java.util.Arrays;
import java.util.List;
import plumbline.statement.Command;

/**
 * A matter on which the lines of a port or of the switch have a last word, with the keywords whose
 * garbled statements put it in doubt. A path such as {@code switchport} stands for a statement of
 * which just that word was understood; {@code switchport mode *} for any that begins so.
 */
enum Matter {
  SHUT("shutdown *"),
  SWITCHED("routing *"),
  MODE("switchport", "switchport mode *", "vlan", "vlan access *", "vlan trunk *"),
  NEGOTIATE("switchport", "switchport nonegotiate *"),
  ACCESS("switchport", "switchport access *", "vlan", "vlan access *", "switchport pvid *"),
  VOICE("switchport", "switchport voice *"),
  NATIVE(
      "switchport",
      "switchport trunk",
      "switchport trunk native *",
      "switchport pvid *",
      "vlan",
      "vlan trunk",
      "vlan trunk native *"),
  NATIVE_TAG(
      "switchport", "switchport trunk", "switchport trunk native *", "vlan", "vlan trunk native *"),
  ALLOWED(
      "switchport",
      "switchport trunk",
      "switchport trunk allowed *",
      "vlan",
      "vlan trunk",
      "vlan trunk allowed *"),
  UNMODELLED("switchport general *", "switchport hybrid *", "switchport trunk group *"),
  FAST_START(
      "spanning-tree",
      "spanning-tree portfast *",
      "spanning-tree port",
      "spanning-tree port type *",
      "spanning-tree edge-port *",
      "spanning-tree common-config *"),
  BPDU_GUARD("spanning-tree", "spanning-tree bpduguard *", "spanning-tree bpdu-guard *"),
  BPDU_FILTER("spanning-tree", "spanning-tree bpdufilter *", "spanning-tree bpdu-filter *"),
  GUARD("spanning-tree", "spanning-tree guard *"),
  UDLD("udld *"),
  COST("spanning-tree", "spanning-tree cost *"),
  PORT_PRIORITY("spanning-tree", "spanning-tree port-priority *"),
  TREE_COSTS(
      "spanning-tree",
      "spanning-tree vlan",
      "spanning-tree vlan cost *",
      "spanning-tree mst",
      "spanning-tree mst cost *"),
  TREE_PORT_PRIORITIES(
      "spanning-tree",
      "spanning-tree vlan",
      "spanning-tree vlan port-priority *",
      "spanning-tree mst",
      "spanning-tree mst port-priority *"),
  LINK_TYPE("spanning-tree", "spanning-tree link-type *"),
  BUNDLE("channel-group *", "lag *"),
  MIN_LINKS("lacp min-links *", "port-channel min-links *"),
  MULTI_CHASSIS("vpc *", "mlag *"),
  SPEED("speed *"),
  DUPLEX("duplex *"),
  MTU("mtu *"),
  TRUST("mls", "mls qos", "mls qos trust *", "qos", "qos trust *"),
  POLICY("service-policy *"),
  STORM("storm-control *"),
  SECURITY("switchport port-security"),
  SNOOPING("ip dhcp", "ip dhcp snooping", "ip dhcp snooping trust *"),
  INSPECTION("ip arp", "ip arp inspection", "ip arp inspection trust *"),
  DESCRIPTION("description *"),
  ADDRESS("ip", "ip address *", "ip unnumbered *", "ipv6", "ipv6 address *"),
  AUTOSTATE("autostate *"),
  PACKET_FILTER("ip access-group *", "ipv6 traffic-filter *"),
  TAG("encapsulation *"),
  REDUNDANCY("standby *", "vrrp *", "hsrp *", "glbp *"),

  VLAN_NAME("name *"),
  BUNDLE_MODE("lacp", "lacp mode *"),
  TREE("spanning-tree", "spanning-tree disable *"),
  HOSTNAME("hostname *"),
  NATIVE_TAG_DEFAULT("vlan dot1q *"),
  VLAN_FILTER("vlan filter *"),
  FAST_START_DEFAULT(
      "spanning-tree",
      "spanning-tree portfast",
      "spanning-tree portfast default *",
      "spanning-tree portfast edge",
      "spanning-tree portfast edge default *",
      "spanning-tree port",
      "spanning-tree port type *"),
  GUARD_DEFAULT(
      "spanning-tree",
      "spanning-tree portfast",
      "spanning-tree portfast bpduguard *",
      "spanning-tree portfast edge",
      "spanning-tree portfast edge bpduguard *",
      "spanning-tree bpduguard *",
      "spanning-tree port type edge bpduguard *"),
  FILTER_DEFAULT(
      "spanning-tree",
      "spanning-tree portfast",
      "spanning-tree portfast bpdufilter *",
      "spanning-tree portfast edge",
      "spanning-tree portfast edge bpdufilter *",
      "spanning-tree bpdufilter *",
      "spanning-tree port type edge bpdufilter *"),
  LOOP_DEFAULT("spanning-tree", "spanning-tree loopguard *"),
  UDLD_DEFAULT("udld *"),
  QOS("mls", "mls qos", "qos"),
  SYSTEM_MTU("system", "system mtu *", "system jumbomtu *"),
  ROUTING("ip", "ip routing *"),
  SWITCHED_DEFAULT("system", "system default", "system default switchport"),
  SHUT_DEFAULT(
      "system",
      "system default",
      "system default switchport",
      "system default switchport shutdown *"),
  SPREADING("vtp", "vtp mode *"),
  TREE_MODE("spanning-tree", "spanning-tree mode *"),
  TREES("spanning-tree", "spanning-tree vlan *", "spanning-tree mst *", "spanning-tree priority *"),
  PATH_COST("spanning-tree", "spanning-tree pathcost *"),
  REGION_NAME("name *"),
  REGION_REVISION("revision *"),
  REGION_INSTANCES("instance *");

  @SuppressWarnings(
      "ImmutableEnumChecker") // an unmodifiable list of constants, which the check cannot see
  private final List<Path> paths;

  Matter(String... paths) {
    this.paths = Arrays.stream(paths).map(Path::of).toList();
  }

  /**
   * Whether a garbled statement, in any meaning that it may have been meant to have, bears on it.
   */
  boolean doubtedBy(Command.Unknown unknown) {
    boolean mayBeAbout = !unknown.understood().isEmpty() || !unknown.candidates().isEmpty();
    return mayBeAbout && unknown.variants().stream().anyMatch(this::doubtedBy);
  }

  /** Whether a garbled statement, of which these leading keywords were understood, bears on it. */
  boolean doubtedBy(List<String> understood) {
    return paths.stream().anyMatch(path -> path.covers(understood));
  }

  private record Path(List<String> words, boolean deeper) {
    static Path of(String text) {
      List<String> words = List.of(text.split(" ", -1));
      boolean deeper = words.get(words.size() - 1).equals("*");
      return new Path(deeper ? words.subList(0, words.size() - 1) : words, deeper);
    }

    boolean covers(List<String> understood) {
      return understood.equals(words)
          || (deeper
              && understood.size() > words.size()
              && understood.subList(0, words.size()).equals(words));
    }
  }
}
