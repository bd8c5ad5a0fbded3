package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.audit.SiteRun.gateway;
import static plumbline.audit.SiteRun.trunk;

import org.junit.jupiter.api.Test;

/**
 * The severity examples of the product contract, sections 6 and 7, on one triangle of switches. The
 * root is c, then a; which link its tree blocks follows from the priorities alone.
 *
 * <pre>
 *      h2     h1 (a pair of uplinks)
 *        \   /  \
 *          a --- b      a-b is blocked at b while all is well
 *           \   /
 *             c         gateway of shop; yard has none
 * </pre>
 */
class LossSeverityTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        shop: {id: 10, gateway: required}
        yard: {id: 20}
        parked: {id: 999, unused: true}
      roles:
        link: {mode: trunk, native: parked, tagged: [shop, yard]}
        up: {mode: trunk, native: parked, tagged: [shop, yard]}
      switches: {a: {}, b: {}, c: {}}
      hosts:
        h1: {ports: {nic0: {to: a Gi1/0/1, role: up}, nic1: {to: b Gi1/0/1, role: up}}, pairs: [[nic0, nic1]]}
        h2: {ports: {nic0: {to: a Gi1/0/2, role: up}}}
      links:
        - {ends: [a Gi1/0/47, c Gi1/0/47], role: link}
        - {ends: [b Gi1/0/48, c Gi1/0/48], role: link}
        - {ends: [a Gi1/0/46, b Gi1/0/46], role: link}
      gateways: {c: [shop]}
      """;

  private static final String VLANS = "ip routing\n!\nvlan 10\n!\nvlan 20\n!\nvlan 999\n!\n";

  private static String port(String number, String allowed) {
    return trunk("GigabitEthernet1/0/" + number, allowed);
  }

  /** The site in one mode of spanning tree; {@code tree} is how its priorities begin. */
  private static SiteRun site(String mode, String tree) {
    String head = "spanning-tree mode " + mode + "\n" + VLANS;
    return SiteRun.of(DESIGN)
        .with(
            "a",
            tree
                + " priority 8192\n"
                + head
                + port("1", "10,20")
                + port("2", "10,20")
                + port("46", "10,20")
                + port("47", "10,20"))
        .with("b", head + port("1", "10,20") + port("46", "10,20") + port("48", "10,20"))
        .with(
            "c",
            tree
                + " priority 4096\n"
                + head
                + port("47", "10,20")
                + port("48", "10,20")
                + gateway(10));
  }

  private static SiteRun site() {
    return site("rapid-pvst", "spanning-tree vlan 1-4094");
  }

  private static SiteRun multiple() {
    return site("mst", "spanning-tree mst 0");
  }

  private static SiteRun single() {
    return site("rstp", "spanning-tree");
  }

  /** The same without shop on a port. */
  private static SiteRun off(SiteRun site, String name, String number) {
    return site.but(name, port(number, "10,20"), port(number, "20"));
  }

  @Test
  void as_designed_nothing_is_lost() {
    assertThat(site().said()).isEmpty();
    assertThat(multiple().said()).isEmpty();
    assertThat(single().said()).isEmpty();
  }

  @Test
  void a_vlan_off_one_uplink_of_a_pair_weakens() {
    assertThat(off(site(), "a", "1").said())
        .containsExactly(
            "weakens tagged-vlan-missing a GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic0. Machines in shop (10) "
                + "on h1 have the network by nic1 only: they lose it when that fails, or "
                + "when they use nic0. When b fails, h1 is cut off from shop (10). The "
                + "same is lost when the cable at b GigabitEthernet1/0/1 fails.");
  }

  @Test
  void a_vlan_off_both_uplinks_breaks_at_both() {
    assertThat(off(off(site(), "a", "1"), "b", "1").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic0. Now h1 is cut off from "
                + "shop (10).",
            "breaks tagged-vlan-missing b GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic1. Now h1 is cut off from "
                + "shop (10).");
  }

  @Test
  void a_vlan_off_the_only_link_breaks() {
    assertThat(off(site(), "a", "2").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/2: Machines in shop "
                + "(10) on h2 lose the network when they use nic0. Now h2 is cut off from "
                + "shop (10).");
  }

  @Test
  void a_vlan_off_the_blocked_link_weakens_and_names_the_failures_that_show_it() {
    assertThat(off(site(), "a", "46").said())
        .containsExactly(
            "weakens tagged-vlan-missing a GigabitEthernet1/0/46: Frames of shop "
                + "(10) do not cross the link to b GigabitEthernet1/0/46. When the link a "
                + "GigabitEthernet1/0/47 to c GigabitEthernet1/0/47 fails, h2 reaches no "
                + "gateway in shop (10); and what h1 nic0 sends in shop (10) reaches no "
                + "gateway. Something else is lost when the link b GigabitEthernet1/0/48 "
                + "to c GigabitEthernet1/0/48 fails.");
  }

  @Test
  void a_vlan_off_a_forwarding_link_is_carried_by_another_where_trees_run_per_vlan() {
    assertThat(off(site(), "a", "47").said())
        .containsExactly(
            "weakens tagged-vlan-missing a GigabitEthernet1/0/47: Frames of shop "
                + "(10) do not cross the link to c GigabitEthernet1/0/47. When b fails, h1 "
                + "and h2 reach no gateway in shop (10). The same is lost when the link b "
                + "GigabitEthernet1/0/48 to c GigabitEthernet1/0/48 fails. Something else "
                + "is lost when the link a GigabitEthernet1/0/46 to b "
                + "GigabitEthernet1/0/46 fails.");
  }

  @Test
  void the_same_breaks_where_few_trees_run_over_all_links() {
    assertThat(off(multiple(), "a", "47").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/47: Frames of shop (10) "
                + "do not cross the link to c GigabitEthernet1/0/47. Now h2 reaches no "
                + "gateway in shop (10); and what h1 nic0 sends in shop (10) reaches no "
                + "gateway. When b fails, h1 reaches no gateway in shop (10). The same is "
                + "lost when the link b GigabitEthernet1/0/48 to c GigabitEthernet1/0/48 "
                + "or the cable at b GigabitEthernet1/0/1 fails.");
    assertThat(off(single(), "a", "47").said()).isEqualTo(off(multiple(), "a", "47").said());
  }

  @Test
  void a_vlan_off_the_blocked_link_of_few_trees_weakens_too() {
    assertThat(off(multiple(), "a", "46").said())
        .containsExactly(
            "weakens tagged-vlan-missing a GigabitEthernet1/0/46: Frames of shop "
                + "(10) do not cross the link to b GigabitEthernet1/0/46. When the link a "
                + "GigabitEthernet1/0/47 to c GigabitEthernet1/0/47 fails, h2 reaches no "
                + "gateway in shop (10); and what h1 nic0 sends in shop (10) reaches no "
                + "gateway. Something else is lost when the link b GigabitEthernet1/0/48 "
                + "to c GigabitEthernet1/0/48 fails.");
    assertThat(off(single(), "a", "46").said()).isEqualTo(off(multiple(), "a", "46").said());
  }

  @Test
  void a_native_mismatch_cuts_both_vlans_there() {
    assertThat(
            site()
                .but(
                    "a",
                    port("47", "10,20"),
                    port("47", "10,20").replace("native vlan 999", "native vlan 20"))
                .but(
                    "c",
                    port("47", "10,20"),
                    port("47", "10,20").replace("native vlan 999", "native vlan 10"))
                .said())
        .containsExactly(
            "weakens native-vlan-in-use a GigabitEthernet1/0/47: Untagged frames of "
                + "the link to c GigabitEthernet1/0/47 land among the hosts of yard (20); "
                + "a host there can send double-tagged frames into other VLANs. The design "
                + "promises yard (20) tagged here, and it leaves untagged. The spanning "
                + "trees of both ends run per VLAN and notice it: yard (20) is blocked at "
                + "a GigabitEthernet1/0/47 and shop (10) at c GigabitEthernet1/0/47, so "
                + "that neither crosses the link. When the link a GigabitEthernet1/0/46 to "
                + "b GigabitEthernet1/0/46 fails, what h1 nic1 sends in yard (20) does not "
                + "reach the rest of it.",
            "weakens native-vlan-in-use c GigabitEthernet1/0/47: Untagged frames of "
                + "the link to a GigabitEthernet1/0/47 land among the hosts of shop (10); "
                + "a host there can send double-tagged frames into other VLANs. The design "
                + "promises shop (10) tagged here, and it leaves untagged. The spanning "
                + "trees of both ends run per VLAN and notice it: yard (20) is blocked at "
                + "a GigabitEthernet1/0/47 and shop (10) at c GigabitEthernet1/0/47, so "
                + "that neither crosses the link. When b fails, h1 and h2 reach no gateway "
                + "in shop (10). The same is lost when the link b GigabitEthernet1/0/48 to "
                + "c GigabitEthernet1/0/48 fails. Something else is lost when the link a "
                + "GigabitEthernet1/0/46 to b GigabitEthernet1/0/46 fails.");
  }

  /** Both ways to the gateway are cut: each link would do. */
  @Test
  void two_faults_that_only_together_cut_break_at_both() {
    assertThat(off(off(site(), "a", "47"), "b", "48").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/47: Frames of shop (10) "
                + "do not cross the link to c GigabitEthernet1/0/47. Now h1 and h2 reach "
                + "no gateway in shop (10).",
            "breaks tagged-vlan-missing b GigabitEthernet1/0/48: Frames of shop (10) "
                + "do not cross the link to c GigabitEthernet1/0/48. Now h1 and h2 reach "
                + "no gateway in shop (10).");
  }

  /** Both are on h1's other way as well, so only one of them still matters to it later. */
  @Test
  void two_faults_around_one_switch_break_at_both() {
    assertThat(off(off(site(), "a", "47"), "a", "46").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/46: Frames of shop (10) "
                + "do not cross the link to b GigabitEthernet1/0/46. Now h2 reaches no "
                + "gateway in shop (10); and what h1 nic0 sends in shop (10) reaches no "
                + "gateway. When the cable at b GigabitEthernet1/0/1 fails, h1 reaches no "
                + "gateway in shop (10).",
            "breaks tagged-vlan-missing a GigabitEthernet1/0/47: Frames of shop (10) "
                + "do not cross the link to c GigabitEthernet1/0/47. Now h2 reaches no "
                + "gateway in shop (10); and what h1 nic0 sends in shop (10) reaches no "
                + "gateway. When b fails, h1 reaches no gateway in shop (10). The same is "
                + "lost when the link b GigabitEthernet1/0/48 to c GigabitEthernet1/0/48 "
                + "or the cable at b GigabitEthernet1/0/1 fails.");
  }

  @Test
  void a_vlan_that_a_switch_lacks_and_a_shut_uplink_break_together() {
    assertThat(
            site()
                .but("b", "vlan 10\n!\nvlan 20", "vlan 20")
                .but("a", port("1", "10,20"), trunk("GigabitEthernet1/0/1", "10,20", "shutdown"))
                .said())
        .containsExactly(
            "breaks port-shut a GigabitEthernet1/0/1: h1 nic0 has no connection "
                + "through this port. Now h1 is cut off from shop (10). When b fails, h1 "
                + "is cut off from yard (20). The same is lost when the cable at b "
                + "GigabitEthernet1/0/1 fails.",
            "breaks vlan-not-created b: Nothing in shop (10) passes through this "
                + "switch, whatever its ports allow; affected: h1 nic1, the link to a "
                + "GigabitEthernet1/0/46 and the link to c GigabitEthernet1/0/48. Now h1 "
                + "is cut off from shop (10). When the link a GigabitEthernet1/0/47 to c "
                + "GigabitEthernet1/0/47 fails, h2 reaches no gateway in shop (10).");
  }
}
