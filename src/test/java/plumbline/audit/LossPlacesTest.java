package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.audit.SiteRun.trunk;

import org.junit.jupiter.api.Test;

/**
 * What is lost at stacks, bundles, gateways and links beyond the switches of the design (product
 * contract, sections 5 and 7). A bundle survives members, and needs as many cables as min-links
 * says (IEEE 802.1AX).
 *
 * <pre>
 *        h1               h1 is plugged into both members of the stack
 *       /  \
 *   [st 1 = st 2]         the stack; its management address lives in shop
 *       \  /
 *       (Po1)             one cable from each member
 *        |
 *        d --- outside    a link that leaves the design
 *        |
 *       edge              a gateway that is no audited switch
 * </pre>
 */
class LossPlacesTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10, gateway: required}, parked: {id: 999, unused: true}}
      roles:
        up: {mode: trunk, native: parked, tagged: [shop]}
        link: {like: up, bundle: lacp, min-links: 1}
      switches: {st: {stack: [1, 2], management: {vlan: shop}}, d: {}}
      hosts:
        h1: {ports: {nic0: {to: st Gi1/0/1, role: up}, nic1: {to: st Gi2/0/1, role: up}}}
      links:
        - {ends: [st Po1, d Po1], role: link, members: [[Gi1/0/48, Gi1/0/48], [Gi2/0/48, Gi1/0/47]]}
        - {ends: [d Gi1/0/40, outside], role: up}
      gateways: {edge: {at: [d Gi1/0/41], vlans: [shop]}}
      """;

  private static final String HEAD =
      "spanning-tree mode rapid-pvst\n!\nvlan 10\n!\nvlan 999\n!\n"
          + trunk("Port-channel1", "10", "port-channel min-links 1");

  private static String member(String port) {
    return "interface GigabitEthernet" + port + "\n channel-group 1 mode active\n!\n";
  }

  private static String port(String number, String allowed, String... lines) {
    return trunk("GigabitEthernet" + number, allowed, lines);
  }

  private static SiteRun site() {
    return SiteRun.of(DESIGN)
        .with(
            "st",
            HEAD + port("1/0/1", "10") + member("1/0/48") + port("2/0/1", "10") + member("2/0/48"))
        .with(
            "d",
            HEAD
                + port("1/0/40", "10")
                + port("1/0/41", "10")
                + member("1/0/47")
                + member("1/0/48"));
  }

  @Test
  void as_designed_nothing_is_lost() {
    assertThat(site().said()).isEmpty();
  }

  @Test
  void a_port_on_one_member_of_a_stack_is_missed_when_the_other_member_fails() {
    assertThat(site().but("st", port("1/0/1", "10"), port("1/0/1", "999")).said())
        .containsExactly(
            "weakens tagged-vlan-missing st GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic0. When member 2 of st "
                + "fails, h1 is cut off from shop (10). The same is lost when the cable at "
                + "st GigabitEthernet2/0/1 fails.");
  }

  @Test
  void a_bundle_that_lacks_the_cable_of_one_member_goes_down_with_the_other_member() {
    assertThat(
            site()
                .but("st", member("2/0/48"), member("2/0/48").replace("!", " shutdown\n!"))
                .said())
        .containsExactly(
            "weakens port-shut st GigabitEthernet2/0/48: This cable passes nothing, "
                + "so that the bundle lacks it. When member 1 of st fails, h1 and the "
                + "management address of st reach no gateway in shop (10). The same is "
                + "lost when the cable st GigabitEthernet1/0/48 to d GigabitEthernet1/0/48 "
                + "fails.");
  }

  @Test
  void a_bundle_that_needs_more_cables_than_designed_goes_down_with_any_of_them() {
    assertThat(site().but("d", "min-links 1", "min-links 2").said())
        .containsExactly(
            "weakens port-setting-differs d Port-channel1: The bundle goes down with "
                + "fewer than 2 links, although the design lets it run on 1. When member 1 "
                + "of st fails, h1 and the management address of st reach no gateway in "
                + "shop (10). The same is lost when member 2 of st, the cable st "
                + "GigabitEthernet1/0/48 to d GigabitEthernet1/0/48 or the cable st "
                + "GigabitEthernet2/0/48 to d GigabitEthernet1/0/47 fails.");
  }

  @Test
  void a_bundle_of_which_each_end_shuts_another_cable_is_down_and_both_ends_break() {
    assertThat(
            site()
                .but("st", member("2/0/48"), member("2/0/48").replace("!", " shutdown\n!"))
                .but("d", member("1/0/48"), member("1/0/48").replace("!", " shutdown\n!"))
                .said())
        .containsExactly(
            "breaks port-shut d GigabitEthernet1/0/48: This cable passes nothing, so "
                + "that the bundle lacks it. Now h1 and the management address of st reach "
                + "no gateway in shop (10).",
            "breaks port-shut st GigabitEthernet2/0/48: This cable passes nothing, "
                + "so that the bundle lacks it. Now h1 and the management address of st "
                + "reach no gateway in shop (10).");
  }

  @Test
  void a_vlan_that_a_stack_lacks_takes_its_management_address_with_it() {
    assertThat(site().but("st", "vlan 10\n!\nvlan 999", "vlan 999").said())
        .containsExactly(
            "breaks vlan-not-created st: Nothing in shop (10) passes through this "
                + "switch, whatever its ports allow; affected: h1 nic0, h1 nic1 and the "
                + "link to d Port-channel1. Now h1 and the management address of st are "
                + "cut off from shop (10).");
  }

  @Test
  void a_link_that_leaves_the_design_loses_its_vlan() {
    assertThat(site().but("d", port("1/0/40", "10"), port("1/0/40", "999")).said())
        .containsExactly(
            "breaks tagged-vlan-missing d GigabitEthernet1/0/40: Frames of shop (10) "
                + "do not cross the link to outside. Now the link out of the design here "
                + "is cut off from shop (10).");
  }

  @Test
  void a_gateway_that_is_no_audited_switch_is_lost_with_its_port() {
    assertThat(site().but("d", port("1/0/41", "10"), port("1/0/41", "10", "shutdown")).said())
        .containsExactly(
            "breaks port-shut d GigabitEthernet1/0/41: The gateway edge has no "
                + "connection through this port. Now h1 and the management address of st "
                + "reach no gateway in shop (10).");
  }
}
