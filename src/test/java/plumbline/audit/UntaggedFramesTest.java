package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Where untagged frames of links and pairs really go. That a native VLAN outside the allowed list
 * passes nothing is section 4 of the product contract; that trees per VLAN name their VLAN on
 * trunks only, so that two access ports in different VLANs join them unnoticed, is common practice,
 * no source.
 */
class UntaggedFramesTest {
  @TempDir private Path scratch;

  private static final String VLANS =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        office: {id: 250}
        parked: {id: 999, unused: true}
      """;
  private static final String LINK =
      VLANS
          + "roles: {link: {qos: none}}\nswitches: {sw1: {}, sw2: {}}\n"
          + "links: [{ends: [sw1 Gi1/0/1, sw2 Gi1/0/1], role: link}]\n";
  private static final String PAIR =
      VLANS
          + "roles: {up: {bundle: none}}\nswitches: {sw1: {}, sw2: {}}\n"
          + "hosts: {h1: {ports: {nic0: {to: sw1 Gi1/0/1, role: up},"
          + " nic1: {to: sw2 Gi1/0/1, role: up}}, pairs: [[nic0, nic1]]}}\n";
  private static final String PER_VLAN = "spanning-tree mode rapid-pvst\n";
  private static final String MST = "spanning-tree mode mst\n";

  private static String device(String global, String lines) {
    return "!\nversion 15.2\n!\nvtp mode transparent\n!\n"
        + global
        + "!\nvlan 220,250,999\n!\ninterface GigabitEthernet1/0/1\n "
        + lines.replace(";", "\n ")
        + "\n!\nend\n";
  }

  private List<String> said(String design, String one, String other) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), design);
    Files.writeString(site.resolve("sw1.cfg"), "hostname sw1\n" + one);
    Files.writeString(site.resolve("sw2.cfg"), "hostname sw2\n" + other);
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome.findings().stream()
        .map(found -> found.severity() + " " + found.rule() + ": " + found.consequence())
        .toList();
  }

  private static String access(int vlan) {
    return "switchport mode access;switchport access vlan " + vlan;
  }

  private static String trunk(int vlan) {
    return "switchport mode trunk;switchport nonegotiate;switchport trunk native vlan " + vlan;
  }

  private static String trunk(int vlan, String allowed) {
    return trunk(vlan) + ";switchport trunk allowed vlan " + allowed;
  }

  @Test
  void two_access_ports_join_their_vlans_though_trees_run_per_vlan() throws IOException {
    assertThat(said(LINK, device(PER_VLAN, access(220)), device(PER_VLAN, access(250))))
        .containsExactly(
            "weakens link-native-differs: Untagged frames of hypervisor (220) arrive in office"
                + " (250), and the other way round: no spanning tree notices it, and they become one"
                + " broadcast domain here. hypervisor (220) and office (250) are one broadcast"
                + " domain: a loop, a flood or a wrong address in one reaches the other.");
  }

  @Test
  void two_trunks_are_noticed_where_trees_run_per_vlan_and_for_certain_not_elsewhere()
      throws IOException {
    assertThat(said(LINK, device(PER_VLAN, trunk(220)), device(PER_VLAN, trunk(250))))
        .singleElement()
        .asString()
        .contains("notice it: hypervisor (220) is blocked at");
    assertThat(said(LINK, device(MST, trunk(220)), device(PER_VLAN, trunk(250))))
        .singleElement()
        .asString()
        .contains("no spanning tree notices it, and they become one broadcast domain here.");
  }

  @Test
  void an_access_port_that_hears_a_trunk_is_blocked_where_trees_run_per_vlan() throws IOException {
    assertThat(said(LINK, device(PER_VLAN, access(250)), device(PER_VLAN, trunk(250))))
        .singleElement()
        .asString()
        .endsWith(
            " link-mode-differs: Tagged frames are dropped at sw1 GigabitEthernet1/0/1, which"
                + " is an access port: at most office (250) crosses the link, untagged. A spanning"
                + " tree per VLAN that hears the trunk blocks the access port: then nothing"
                + " crosses.");
    assertThat(said(LINK, device(MST, access(250)), device(MST, trunk(250))))
        .singleElement()
        .asString()
        .endsWith(": at most office (250) crosses the link, untagged.");
  }

  @Test
  void untagged_frames_of_a_host_are_dropped_where_the_native_vlan_is_not_let_through()
      throws IOException {
    String global = PER_VLAN;
    assertThat(said(PAIR, device(global, trunk(999, "250")), device(global, trunk(250, "250"))))
        .containsExactly(
            "untidy pair-differs: Untagged frames of h1 are dropped by nic0 and land in office (250)"
                + " by nic1: a machine that sends untagged loses the network with the port.");
    assertThat(said(PAIR, device(global, trunk(999, "250")), device(global, trunk(220, "250"))))
        .containsExactly("untidy pair-differs: Untagged frames of h1 are dropped by both ports.");
    assertThat(said(PAIR, device(global, trunk(220)), device(global, trunk(250))))
        .singleElement()
        .asString()
        .contains("land in hypervisor (220) by nic0 and land in office (250) by nic1");
  }

  @Test
  void a_native_vlan_that_one_switch_tags_is_no_likeness_of_a_pair() throws IOException {
    String tagging = PER_VLAN + "vlan dot1q tag native\n";
    assertThat(said(PAIR, device(PER_VLAN, trunk(250)), device(tagging, trunk(250))))
        .containsExactly(
            "untidy pair-differs: Untagged frames of h1 are dropped by nic1, where the native VLAN"
                + " is tagged.");
  }

  @Test
  void access_vlans_are_compared_towards_a_host_though_a_port_is_left_to_negotiate()
      throws IOException {
    assertThat(
            said(
                PAIR,
                device(PER_VLAN, "switchport access vlan 220"),
                device(PER_VLAN, access(250))))
        .singleElement()
        .asString()
        .startsWith("weakens negotiation-open: ")
        .contains("land in hypervisor (220) by nic0 and land in office (250) by nic1");
  }
}
