package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Designed bundles of which ports are missing or shut (section 6 of the product contract: a wider
 * finding is given only if it remains when the narrower ones are repaired).
 */
class BundleCauseTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        parked: {id: 999, unused: true}
      roles:
        link: {mode: trunk, native: parked, tagged: [hypervisor], negotiate: false}
      switches:
        sw1: {}
        sw2: {}
      links:
        - {ends: [sw1 Po1, sw2 Po1], role: link, members: [[Gi1/0/49, Gi1/0/49], [Gi1/0/50, Gi1/0/50]]}
      """;
  private static final String HEAD =
      "hostname sw1\n!\nvtp mode transparent\n!\nvlan 220,999\n!\ninterface Vlan220\n!\n";
  private static final String TRUNK =
      " switchport trunk native vlan 999\n switchport trunk allowed vlan 220\n"
          + " switchport mode trunk\n switchport nonegotiate\n";
  private static final String BUNDLE = "interface Port-channel1\n" + TRUNK;
  private static final String END = "!\nend\n";

  private static String member(int number, String tail) {
    return "!\ninterface GigabitEthernet1/0/" + number + "\n" + TRUNK + tail;
  }

  private static List<String> said(String... parts) {
    AuditOutcome outcome = RuleCaseRun.run(DESIGN, HEAD + String.join("", parts) + END);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome.findings().stream()
        .map(
            one ->
                one.rule()
                    + " "
                    + one.place().orElseThrow().port().orElse("")
                    + ": "
                    + one.consequence())
        .toList();
  }

  @Test
  void the_last_open_member_takes_the_bundle_down() {
    String join = " channel-group 1 mode active\n";
    assertThat(said(BUNDLE, member(49, join), member(50, join + " shutdown\n")))
        .containsExactly(
            "port-shut GigabitEthernet1/0/50: This cable passes nothing, so that the bundle lacks"
                + " it.");
    assertThat(said(BUNDLE, member(49, join + " shutdown\n"), member(50, join + " shutdown\n")))
        .hasSize(2)
        .contains(
            "port-shut GigabitEthernet1/0/49: This cable passes nothing, nor does another: all 2"
                + " members are shut, and the link to sw2 Port-channel1 is down.");
  }

  @Test
  void a_shut_bundle_that_the_design_does_not_name_takes_the_hosts_port_down() {
    String design =
        DESIGN.substring(0, DESIGN.indexOf("links:"))
            + "hosts: {h1: {ports: {nic0: {to: sw1 Gi1/0/1, role: link}}}}\n";
    String port = member(1, " channel-group 1 mode active\n");
    // A shut bundle takes its members down (common practice, no source).
    AuditOutcome shut = RuleCaseRun.run(design, HEAD + BUNDLE + " shutdown\n" + port + END);
    assertThat(shut.findings())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.rule()).isEqualTo("port-shut");
              assertThat(one.found()).isEqualTo("Port-channel1, which it joins, is shut");
              assertThat(one.consequence())
                  .isEqualTo(
                      "h1 nic0 has no connection through this port. Now h1 is cut off from"
                          + " hypervisor (220).");
            });
    assertThat(RuleCaseRun.run(design, HEAD + BUNDLE + port + END).findings()).isEmpty();
  }

  @Test
  void a_bundle_that_is_missing_with_all_its_members_is_told_by_them() {
    assertThat(said())
        .hasSize(2)
        .allMatch(one -> one.startsWith("port-absent GigabitEthernet1/0/"))
        .allMatch(
            one ->
                one.endsWith(
                    " No member of its bundle is there: the link to sw2 Port-channel1 has no cable"
                        + " here."));
    assertThat(said(BUNDLE)).hasSize(2).allMatch(one -> one.startsWith("port-absent Gigabit"));
  }

  @Test
  void a_bundle_that_a_line_removes_or_that_no_present_port_joins_is_absent_itself() {
    assertThat(said(BUNDLE, "!\nno interface Port-channel1\n"))
        .hasSize(3)
        .anyMatch(one -> one.startsWith("port-absent Port-channel1: "));
    assertThat(said(member(49, ""), member(50, "")))
        .anyMatch(one -> one.startsWith("port-absent Port-channel1: "));
  }

  @Test
  void an_address_on_a_sub_interface_in_an_unused_vlan_is_the_switch_itself() {
    String join = " channel-group 1 mode active\n";
    String address = " encapsulation dot1q 999\n ip address 192.0.2.1 255.255.255.0\n";
    assertThat(
            said(
                BUNDLE.replace("allowed vlan 220", "allowed vlan 220,999"),
                member(49, join).replace("allowed vlan 220", "allowed vlan 220,999"),
                member(50, join).replace("allowed vlan 220", "allowed vlan 220,999"),
                "!\ninterface GigabitEthernet1/0/3.999\n" + address))
        .singleElement()
        .asString()
        .startsWith(
            "native-vlan-in-use GigabitEthernet1/0/3.999: The switch itself can be reached");
  }
}
