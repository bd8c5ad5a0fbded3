package plumbline.design;

import static plumbline.design.ShapeParts.ADDRESS;
import static plumbline.design.ShapeParts.BRIDGE_ADDRESS;
import static plumbline.design.ShapeParts.CABLED_PORT;
import static plumbline.design.ShapeParts.END;
import static plumbline.design.ShapeParts.HOST_PORT;
import static plumbline.design.ShapeParts.LINE;
import static plumbline.design.ShapeParts.MEMBER;
import static plumbline.design.ShapeParts.NAME;
import static plumbline.design.ShapeParts.PORT;
import static plumbline.design.ShapeParts.ROLE;
import static plumbline.design.ShapeParts.RULE;
import static plumbline.design.ShapeParts.SWITCH;
import static plumbline.design.ShapeParts.TRUTH;
import static plumbline.design.ShapeParts.VLAN;
import static plumbline.design.ShapeParts.VLAN_RANGE;
import static plumbline.design.ShapeParts.either;
import static plumbline.design.ShapeParts.field;
import static plumbline.design.ShapeParts.instances;
import static plumbline.design.ShapeParts.keys;
import static plumbline.design.ShapeParts.list;
import static plumbline.design.ShapeParts.listOf;
import static plumbline.design.ShapeParts.map;
import static plumbline.design.ShapeParts.need;
import static plumbline.design.ShapeParts.words;

import java.util.List;
import java.util.Set;
import plumbline.design.Shape.Field;
import plumbline.design.Shape.Keys;
import plumbline.design.Shape.MapOf;
import plumbline.design.Shape.Measure;
import plumbline.design.Shape.Whole;
import plumbline.vlan.VlanId;

/** The one table of every key that a design file can have. */
final class DesignShape {
  /** The value of {@code format} that this program reads. */
  static final String FORMAT = "plumbline-design/1";

  /** The word for the far end of a link that leaves the design. */
  static final String OUTSIDE = "outside";

  private DesignShape() {}

  /** The shape of a whole file, with the dialects that a switch may name. */
  static Keys of(List<String> dialects) {
    return keys(
        "a design",
        need("format", words(FORMAT), "Says that the file is a design, and of which format."),
        field("site", LINE, "Name of the site, for the head of reports."),
        field("revision", LINE, "The change record that approved this design."),
        field("vlans", map("VLAN", vlan()), "The VLANs of the site, each under a name of its own."),
        field("other-vlans", list(VLAN_RANGE), "Known VLANs that are not ours: never undeclared."),
        field("roles", map("role", role()), "What each kind of port must look like."),
        field("switches", map("switch", switchOf(dialects)), "The switches to be audited."),
        field("hosts", map("host", host()), "The hypervisor hosts and where they are cabled to."),
        field(
            "links", list(link()), "The links between switches, and those that leave the design."),
        field("gateways", map("gateway", gateway()), "What routes between the VLANs."),
        field(
            "multi-chassis",
            list(multiChassis()),
            "Pairs of switches that offer bundles together."),
        field("services", map("service", service()), "What must survive single failures."),
        field("rules", rules(), "Choices about rules."),
        field("max-age-days", new Whole(1, 3660), "Age in days at which a saved config is stale."),
        field(
            "harmless", list(LINE), "Patterns of unknown statements that this site vouches for."));
  }

  private static Keys vlan() {
    return keys(
        "a VLAN",
        need("id", new Whole(VlanId.MIN, VlanId.MAX), "Its number."),
        field(
            "gateway",
            words("required", "forbidden", "optional"),
            "Whether it is routed; optional if left out."),
        field("one-domain", TRUTH, "It must be one broadcast domain across all switches."),
        field("telephony", TRUTH, "Phones and calls live in it."),
        field("unused", TRUTH, "No host may live in it: for native VLANs and spare ports."),
        field("filter", TRUTH, "Its gateways must have a packet filter."),
        field(
            "apart-from",
            list(VLAN),
            "VLANs with which it must never share a failure or a domain."),
        field("name", LINE, "The name it must have on the switches."));
  }

  private static Keys role() {
    Field like = field("like", ROLE, "The role that this one starts from.");
    return keys("a role", List.of(like), roleKeys());
  }

  /** What a role asks of a port, in the order of {@link RoleKeys#ALL}. */
  static List<Field> roleKeys() {
    return List.of(
        field("mode", words("access", "trunk", "routed"), "What the port does with frames."),
        field("access", VLAN, "The VLAN of an access port."),
        field("voice", VLAN, "The VLAN in which a phone behind an access port tags."),
        field("native", VLAN, "The untagged VLAN of a trunk."),
        field("tagged", list(VLAN), "The VLANs that a trunk carries tagged: these and no other."),
        field("may-carry", list(either(VLAN_RANGE, VLAN)), "VLANs that a trunk may carry besides."),
        field("fast-start", TRUTH, "Edge fast-start: forwards at once, no bridge is behind it."),
        field("bpdu-guard", TRUTH, "Disables the port when a bridge speaks."),
        field("bpdu-filter", TRUTH, "Stops spanning-tree frames both ways."),
        field("root-guard", TRUTH, "The port may not lead to the root."),
        field("loop-guard", TRUTH, "Blocks the port when spanning-tree frames cease."),
        field("udld", TRUTH, "Detects links that work in one direction only."),
        field("bundle", words("none", "lacp", "static"), "How the port is bundled with others."),
        field("min-links", new Whole(1, 64), "Members that a bundle needs to stay up."),
        field("negotiate", TRUTH, "Whether trunk negotiation is open."),
        field("native-tagging", TRUTH, "Whether the native VLAN is sent tagged."),
        field("qos", qos(), "Which marking is trusted, or which policies apply."),
        field("speed", either(new Whole(1, 800_000), words("auto")), "Speed in Mb/s, or auto."),
        field("duplex", words("full", "half", "auto"), "Duplex."),
        field("mtu", new Whole(68, 65_535), "Largest frame payload in octets."),
        field("storm-control", TRUTH, "Whether storm control limits some traffic."),
        field("port-security", TRUTH, "Whether the addresses behind the port are limited."),
        field("snooping-trust", TRUTH, "Whether address-assignment answers are trusted."),
        field("description", LINE, "Pattern of the description: * any text, ? one character."));
  }

  private static Shape qos() {
    return either(
        words("none", "trust-cos", "trust-dscp"),
        keys(
            "a QoS choice",
            field("policy-in", NAME, "Name of the policy for received frames."),
            field("policy-out", NAME, "Name of the policy for sent frames.")));
  }

  private static Keys switchOf(List<String> dialects) {
    return keys(
        "a switch",
        field("hostname", NAME, "The name in its config, if that is another one."),
        field("dialect", words(dialects), "Table of defaults, only to override detection."),
        field("stack", listOf(new Whole(1, 64), 1), "Stack members that can fail on their own."),
        field(
            "management",
            keys("a management address", need("vlan", VLAN, "The VLAN of its own address.")),
            "How the switch itself is reached."),
        field("place", place(), "Where it is mounted."),
        field("spanning-tree", spanningTree(), "What its spanning tree must look like."),
        field(
            "ports",
            new MapOf("port", PORT, either(ROLE, sheetPort()), Set.of()),
            "Port sheet: a role for each port or range of ports without a host or link."));
  }

  private static Keys sheetPort() {
    return keys(
        "a port of the sheet",
        List.of(need("role", ROLE, "What the port must look like.")),
        roleKeys());
  }

  private static Keys place() {
    return keys(
        "a place",
        need("rack", LINE, "Label of the rack."),
        need("unit", new Whole(1, 100), "Lowest rack unit."));
  }

  private static Keys spanningTree() {
    return keys(
        "a spanning tree",
        field("mode", words("pvst", "rapid-pvst", "mst"), "Protocol."),
        field("path-cost", words("short", "long"), "Path costs of 16 or 32 bits."),
        field(
            "bridge-address", BRIDGE_ADDRESS, "Bridge address: decides between equal priorities."),
        field("mst", mst(), "The region."),
        field("root-of", list(VLAN), "VLANs whose root it is."),
        field("second-for", list(VLAN), "VLANs whose root it becomes when the root fails."));
  }

  private static Keys mst() {
    return keys(
        "an MST region",
        need("name", ShapeParts.REGION_NAME, "Its name, up to 32 characters."),
        need("revision", new Whole(0, 65_535), "Its revision."),
        field("instances", instances(list(VLAN)), "VLANs of each instance; all others are in 0."));
  }

  private static Keys host() {
    return keys(
        "a host",
        field("place", place(), "Where it is mounted."),
        need("ports", map("port", hostPort()), "Its ports."),
        field(
            "pairs",
            list(new Shape.ListOf(HOST_PORT, 2, 2)),
            "Pairs of its ports: alike, on different switches, not bundled."));
  }

  private static Keys hostPort() {
    return keys(
        "a host's port",
        List.of(
            need("to", CABLED_PORT, "Switch and port that it is cabled to."),
            need("role", ROLE, "What the switch port must look like."),
            field("cable", LINE, "Label of the cable."),
            field("medium", LINE, "Kind of cable."),
            field("length-m", new Measure(100_000), "Length of the cable in metres.")),
        roleKeys());
  }

  private static Keys link() {
    return keys(
        "a link",
        List.of(
            need(
                "ends", new Shape.ListOf(END, 2, 2), "Its two ends; outside for an end elsewhere."),
            need("role", ROLE, "What both ends must look like."),
            field("members", list(MEMBER), "Cables of a bundle, each with its port at both ends.")),
        roleKeys());
  }

  private static Shape gateway() {
    Set<String> markers = Set.of("at", "vlans");
    Keys served =
        keys(
            "a VLAN of a gateway",
            field("address", ADDRESS, "The address it must have there."),
            field("active", TRUTH, "Whether it must be the active one of its group."));
    Shape names = list(VLAN);
    Keys outside =
        new Keys(
            "a gateway outside the design",
            List.of(
                need("at", listOf(CABLED_PORT, 1), "Switch ports that it is behind."),
                need("vlans", either(names, map("VLAN", served)), "VLANs that it routes.")),
            markers);
    return either(names, outside, new MapOf("VLAN", NAME, served, markers));
  }

  private static Keys multiChassis() {
    return keys(
        "a multi-chassis pair",
        need("switches", new Shape.ListOf(SWITCH, 2, 2), "The two switches."),
        need("peer-link", PORT, "The port on each that joins them."));
  }

  private static Keys service() {
    return keys(
        "a service",
        need("members", listOf(ShapeParts.SERVICE_MEMBER, 1), "Where it runs: host and VLAN."),
        field("needs", new Whole(1, 1000), "How many members must work; 1 if left out."),
        field(
            "survives",
            listOf(words("switch", "link", "host", "vlan", "gateway"), 1),
            "Single failures that it must survive; all kinds if left out."));
  }

  private static Keys rules() {
    return keys("rules", field("silent", list(RULE), "Rules that are switched off."));
  }
}
