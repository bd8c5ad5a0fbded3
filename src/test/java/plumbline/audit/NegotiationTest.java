package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What an open negotiation is said to do, by place and mode (a fixed trunk that sends negotiation
 * frames makes a trunk of a far end that is left to negotiation: common practice, no source).
 */
class NegotiationTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        parked: {id: 999, unused: true}
      roles:
        uplink: {mode: trunk, negotiate: false}
        implied: {native: parked, tagged: [hypervisor]}
        wanting: {duplex: auto}
        closed: {negotiate: false}
      switches:
        sw1: {}
      """;
  private static final String HEAD = "hostname sw1\n!\nvtp mode transparent\n!\nvlan 220,999\n!\n";

  private static List<String> said(String place, String lines) {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN + place, HEAD + "interface GigabitEthernet1/0/1\n" + lines + "!\nend\n");
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome.findings().stream()
        .map(
            one ->
                one.severity() + " " + one.rule() + ": " + one.found() + ". " + one.consequence())
        .toList();
  }

  private static String link(String role) {
    return "links:\n  - {ends: [sw1 Gi1/0/1, outside], role: " + role + "}\n";
  }

  private static String host(String role) {
    return "hosts: {vmhost: {ports: {nic0: {to: sw1 Gi1/0/1, role: " + role + "}}}}\n";
  }

  @Test
  void a_fixed_trunk_that_sends_frames_invites_what_is_behind_it() {
    assertThat(said(link("uplink"), " switchport mode trunk\n"))
        .containsExactly(
            "weakens negotiation-open: negotiation frames are sent. The port invites the far end to"
                + " trunk: a far end that is left to negotiation is a trunk because of it, though"
                + " no line there says so.");
    assertThat(said(host("uplink"), " switchport mode trunk\n"))
        .containsExactly(
            "weakens negotiation-open: negotiation frames are sent. The port invites whatever is"
                + " plugged in to trunk: a switch port that is left to negotiation becomes a trunk"
                + " as soon as it is connected here.");
  }

  @Test
  void a_dynamic_port_needs_no_key_in_its_role() {
    assertThat(said(link("wanting"), " switchport mode dynamic auto\n"))
        .containsExactly(
            "weakens negotiation-open: the mode is left to negotiation. Whether the port trunks is"
                + " up to the other end: towards a device that does not negotiate it is an access"
                + " port in VLAN 1, and whatever negotiates can turn it into a trunk.");
    assertThat(said(host("wanting"), " switchport mode dynamic auto\n"))
        .singleElement()
        .asString()
        .contains(": towards a host it is an access port in VLAN 1,");
  }

  @Test
  void a_role_that_implies_a_mode_is_not_heard_twice() {
    assertThat(said(host("implied"), " switchport mode dynamic auto\n"))
        .singleElement()
        .asString()
        .startsWith("breaks negotiation-open: ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"private-vlan host", "dot1q-tunnel"})
  void a_mode_that_is_not_modelled_leaves_negotiation_open(String mode) {
    assertThat(said(host("closed"), " switchport mode " + mode + "\n"))
        .singleElement()
        .asString()
        .startsWith("unverified negotiation-open: ");
    assertThat(said(host("closed"), " switchport mode " + mode + "\n switchport nonegotiate\n"))
        .isEmpty();
    assertThat(said(host("uplink"), " switchport mode " + mode + "\n"))
        .singleElement()
        .asString()
        .startsWith("breaks mode-differs: ");
  }
}
