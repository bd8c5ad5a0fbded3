package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.audit.SiteRun.trunk;

import org.junit.jupiter.api.Test;

/**
 * What is lost at a bundle that ends on both switches of a multi-chassis pair: each of its cables
 * stands in for the other (IEEE 802.1AX; that two switches offer one bundle together is common
 * practice, no source).
 *
 * <pre>
 *   ra ----- Po1 ----- rb     both route shop
 *     \               /
 *     Po11         Po11       one bundle of d, one cable to each
 *        \         /
 *         d ----- h1
 * </pre>
 */
class LossSharedBundleTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10, gateway: required}, parked: {id: 999, unused: true}}
      roles:
        up: {mode: trunk, native: parked, tagged: [shop]}
        link: {like: up, bundle: lacp}
      switches: {ra: {}, rb: {}, d: {}}
      hosts:
        h1: {ports: {nic0: {to: d Gi1/0/1, role: up}}}
      multi-chassis: [{switches: [ra, rb], peer-link: Po1}]
      links:
        - {ends: [ra Po1, rb Po1], role: link, members: [[Gi1/0/47, Gi1/0/47], [Gi1/0/48, Gi1/0/48]]}
        - {ends: [ra Po11, d Po11], role: link, members: [[Gi1/0/11, Gi1/0/47]]}
        - {ends: [rb Po11, d Po11], role: link, members: [[Gi1/0/11, Gi1/0/48]]}
      gateways: {ra: [shop], rb: [shop]}
      """;

  private static final String HEAD =
      "ip routing\n!\nspanning-tree mode rapid-pvst\n!\nvlan 10\n!\nvlan 999\n!\n";

  private static String member(String port, int bundle) {
    return "interface GigabitEthernet" + port + "\n channel-group " + bundle + " mode active\n!\n";
  }

  private static String core(int host) {
    return HEAD
        + "interface Vlan10\n ip address 192.0.2."
        + host
        + " 255.255.255.0\n standby version 2\n standby 10 ip 192.0.2.1\n standby 10 priority "
        + (host == 2 ? 110 : 90)
        + "\n!\n"
        + trunk("Port-channel1", "10")
        + trunk("Port-channel11", "10")
        + member("1/0/11", 11)
        + member("1/0/47", 1)
        + member("1/0/48", 1);
  }

  private static SiteRun site() {
    return SiteRun.of(DESIGN)
        .with("ra", core(2))
        .with("rb", core(3))
        .with(
            "d",
            "spanning-tree mode rapid-pvst\n!\nvlan 10\n!\nvlan 999\n!\n"
                + trunk("Port-channel11", "10")
                + trunk("GigabitEthernet1/0/1", "10")
                + member("1/0/47", 11)
                + member("1/0/48", 11));
  }

  @Test
  void as_designed_nothing_is_lost() {
    assertThat(site().said()).isEmpty();
  }

  @Test
  void a_cable_that_is_shut_is_missed_when_the_other_one_fails() {
    assertThat(
            site()
                .but(
                    "d",
                    member("1/0/48", 11),
                    member("1/0/48", 11).replace("!\n", " shutdown\n!\n"))
                .said())
        .containsExactly(
            "weakens port-shut d GigabitEthernet1/0/48: This cable passes nothing, so that the"
                + " bundle lacks it. When ra fails, h1 reaches no gateway in shop (10). The same"
                + " is lost when the link ra Port-channel11 to d Port-channel11 fails.");
  }

  @Test
  void a_vlan_off_the_shared_end_is_off_both_cables() {
    assertThat(
            site().but("d", trunk("Port-channel11", "10"), trunk("Port-channel11", "999")).said())
        .containsExactly(
            "breaks tagged-vlan-missing d Port-channel11: Frames of shop (10) do not cross the link"
                + " to ra Port-channel11 and rb Port-channel11. Now h1 reaches no gateway in shop"
                + " (10).");
  }
}
