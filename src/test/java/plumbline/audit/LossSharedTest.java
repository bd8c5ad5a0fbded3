package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.audit.SiteRun.gateway;
import static plumbline.audit.SiteRun.trunk;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import plumbline.finding.Affected;
import plumbline.finding.Finding;

/**
 * One cause that takes much, and what only several causes take: services and chains (product
 * contract, sections 2, 6 and 7).
 *
 * <pre>
 *   h1  h2    h3
 *     \ |      |
 *      a ----- b ----- c      c routes shop, d routes yard; the links are the only ones
 *      |                \
 *    phones              d
 * </pre>
 */
class LossSharedTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        shop: {id: 10, gateway: required}
        yard: {id: 20, gateway: required}
        parked: {id: 999, unused: true}
      roles:
        up: {mode: trunk, native: parked, tagged: [shop, yard]}
        phone: {mode: access, access: shop}
      switches: {a: {}, b: {}, c: {}, d: {}}
      hosts:
        h1: {ports: {nic0: {to: a Gi1/0/1, role: up}}}
        h2: {ports: {nic0: {to: a Gi1/0/2, role: up}}}
        h3: {ports: {nic0: {to: b Gi1/0/3, role: up}}}
      links:
        - {ends: [a Gi1/0/47, b Gi1/0/47], role: up}
        - {ends: [b Gi1/0/48, c Gi1/0/48], role: up}
        - {ends: [c Gi1/0/49, d Gi1/0/49], role: up}
      gateways: {c: [shop], d: [yard]}
      """;

  private static final String TWO_OF_THREE =
      "services: {till: {members: [h1 shop, h2 shop, h3 shop], needs: 2, survives: [host]}}\n";
  private static final String EITHER =
      "services: {till: {members: [h1 shop, h3 yard], needs: 1, survives: [host, vlan, gateway]}}\n";

  private static String port(int number, String allowed) {
    return trunk("GigabitEthernet1/0/" + number, allowed);
  }

  private static String config(int... ports) {
    return "spanning-tree mode rapid-pvst\nip routing\n!\nvlan 10\n!\nvlan 20\n!\nvlan 999\n!\n"
        + IntStream.of(ports)
            .mapToObj(number -> port(number, "10,20"))
            .collect(Collectors.joining());
  }

  private static SiteRun site(String more) {
    return SiteRun.of(DESIGN + more)
        .with("a", config(1, 2, 47))
        .with("b", config(3, 47, 48))
        .with("c", config(48, 49) + gateway(10))
        .with("d", config(49) + gateway(20));
  }

  private static SiteRun off(SiteRun site, String name, int number, String left) {
    return site.but(name, port(number, "10,20"), port(number, left));
  }

  @Test
  void as_designed_nothing_is_lost() {
    assertThat(site("").said()).isEmpty();
    assertThat(site(TWO_OF_THREE).said()).isEmpty();
    assertThat(site(EITHER).said()).isEmpty();
  }

  @Test
  void of_two_faults_in_a_row_each_breaks_what_is_behind_it() {
    assertThat(off(off(site(""), "a", 47, "20"), "c", 48, "20").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/47: Frames of shop (10) "
                + "do not cross the link to b GigabitEthernet1/0/47. Now h1 and h2 reach "
                + "no gateway in shop (10).",
            "breaks tagged-vlan-missing c GigabitEthernet1/0/48: Frames of shop (10) "
                + "do not cross the link to b GigabitEthernet1/0/48. Now h1, h2 and h3 "
                + "reach no gateway in shop (10).");
  }

  @Test
  void a_service_that_needs_two_of_three_survives_one_loss_and_not_the_next() {
    assertThat(off(site(TWO_OF_THREE), "a", 1, "20").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic0. Now h1 is cut off from "
                + "shop (10). When h2 fails, the service till stops. The same is lost when "
                + "h3 fails.");
  }

  @Test
  void two_losses_stop_a_service_that_needs_two_of_three() {
    assertThat(off(off(site(TWO_OF_THREE), "a", 1, "20"), "b", 3, "20").said())
        .containsExactly(
            "breaks tagged-vlan-missing a GigabitEthernet1/0/1: Machines in shop "
                + "(10) on h1 lose the network when they use nic0. Now h1 is cut off from "
                + "shop (10); and the service till stops.",
            "breaks tagged-vlan-missing b GigabitEthernet1/0/3: Machines in shop "
                + "(10) on h3 lose the network when they use nic0. Now h3 is cut off from "
                + "shop (10); and the service till stops.");
  }

  @Test
  void a_lost_second_member_shows_when_host_vlan_or_gateway_of_the_first_fails() {
    assertThat(off(site(EITHER), "b", 3, "10").said())
        .containsExactly(
            "breaks tagged-vlan-missing b GigabitEthernet1/0/3: Machines in yard "
                + "(20) on h3 lose the network when they use nic0. Now h3 is cut off from "
                + "yard (20). When the gateway c fails, the service till stops. The same "
                + "is lost when h1 or shop (10) fails.");
  }

  @Test
  void thirty_losses_by_one_missing_vlan_are_one_finding_that_counts_and_lists_them() {
    String hosts =
        IntStream.range(0, 30)
            .mapToObj("  m%1$d: {ports: {nic0: {to: a Gi1/0/1%1$02d, role: up}}}\n"::formatted)
            .collect(Collectors.joining());
    SiteRun many =
        site("")
            .designed("hosts:\n", "hosts:\n" + hosts)
            .with("a", config(IntStream.range(100, 130).toArray()) + config(1, 2, 47));
    assertThat(many.said()).isEmpty();
    List<Finding> findings = off(many, "a", 47, "20").findings();
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).affected())
        .hasSize(32)
        .allMatch(one -> one.loss() == Affected.Loss.GATEWAY && one.failure().isEmpty())
        .extracting(Affected::who)
        .contains("h1", "m0", "m29")
        .doesNotContain("h3");
    assertThat(findings.get(0).consequence())
        .isEqualTo(
            "Frames of shop (10) do not cross the link to b GigabitEthernet1/0/47. Now m0, m1, m2,"
                + " m3, m4 and 27 more reach no gateway in shop (10).");
  }

  @Test
  void forty_phones_with_one_gap_say_the_same_so_that_a_report_tells_them_once() {
    String access = "interface GigabitEthernet1/0/%d\n switchport mode access\n%s!\n";
    String phones =
        IntStream.range(60, 100)
            .mapToObj(port -> access.formatted(port, " switchport access vlan 20\n"))
            .collect(Collectors.joining());
    SiteRun wrong =
        site("")
            .designed("a: {}", "a: {ports: {Gi1/0/60-99: phone}}")
            .with("a", config(1, 2, 47) + phones);
    List<Finding> findings = wrong.findings();
    assertThat(findings).hasSize(40).allMatch(one -> one.rule().equals("access-vlan-differs"));
    assertThat(findings)
        .extracting(Finding::consequence)
        .containsOnly(
            "The phone device is in yard (20) and not in shop (10). Now the phone here is cut off"
                + " from shop (10).");
    assertThat(findings).allMatch(one -> one.affected().size() == 1);
  }
}
