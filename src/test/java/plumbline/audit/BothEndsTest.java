package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What only both ends of a link or both ports of a pair together show, and what of it is the
 * business of one port: pair and link come after switch and port, and are given only if they remain
 * when these are repaired.
 */
class BothEndsTest {
  @TempDir private Path scratch;

  private static final String VLANS =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        office: {id: 250}
        parked: {id: 999, unused: true}
      """;

  private static String link(String role) {
    return VLANS
        + "roles: {link: {"
        + role
        + "}}\nswitches: {sw1: {}, sw2: {}}\n"
        + "links: [{ends: [sw1 Gi1/0/48, sw2 Gi1/0/48], role: link}]\n";
  }

  private static String pair(String first, String second) {
    return VLANS
        + "roles: {up: {"
        + first
        + "}, other: {"
        + second
        + "}}\nswitches: {sw1: {}, sw2: {}}\n"
        + "hosts: {h1: {ports: {nic0: {to: sw1 Gi1/0/48, role: up}, nic1: {to: sw2 Gi1/0/48, role:"
        + " other}}, pairs: [[nic0, nic1]]}}\n";
  }

  private static String device(String name, String... lines) {
    return "hostname "
        + name
        + "\n!\nversion 15.2\n!\nvtp mode transparent\n!\nspanning-tree mode rapid-pvst\n!\nvlan"
        + " 220,250,999\n!\ninterface GigabitEthernet1/0/48\n "
        + String.join("\n ", lines)
        + "\n!\nend\n";
  }

  private AuditOutcome run(String design, String... devices) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), design);
    for (int index = 0; index < devices.length; index++) {
      Files.writeString(site.resolve("sw" + (index + 1) + ".cfg"), devices[index]);
    }
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> said(AuditOutcome outcome) {
    return outcome.findings().stream()
        .map(
            one ->
                one.severity()
                    + " "
                    + one.rule()
                    + " "
                    + one.place().orElseThrow().switchName()
                    + ": "
                    + one.consequence())
        .toList();
  }

  private static long conforming(AuditOutcome outcome, String rule) {
    return outcome.checks().stream()
        .filter(count -> count.rule().equals(rule))
        .mapToLong(count -> count.conforms())
        .sum();
  }

  private static final String TRUNK = "switchport mode trunk";
  private static final String QUIET = "switchport nonegotiate";

  @Test
  void a_native_vlan_that_the_role_names_is_the_business_of_the_port_that_departs()
      throws IOException {
    String allowed = "switchport trunk allowed vlan 220,250,999";
    AuditOutcome outcome =
        run(
            link("mode: trunk, native: parked, negotiate: false"),
            device("sw1", TRUNK, QUIET, allowed, "switchport trunk native vlan 999"),
            device("sw2", TRUNK, QUIET, allowed, "switchport trunk native vlan 250"));
    assertThat(said(outcome))
        .singleElement()
        .asString()
        .startsWith("weakens native-vlan-in-use sw2: ")
        .endsWith(
            " The spanning trees of both ends run per VLAN and notice it: parked (999) is blocked at"
                + " sw1 GigabitEthernet1/0/48 and office (250) at sw2 GigabitEthernet1/0/48, so that"
                + " neither crosses the link.");
  }

  @Test
  void a_silenced_port_rule_does_not_silence_the_link() throws IOException {
    AuditOutcome outcome =
        run(
            link("mode: trunk, native: parked, negotiate: false")
                + "rules: {silent: [native-vlan-differs, native-vlan-in-use]}\n",
            device("sw1", TRUNK, QUIET, "switchport trunk native vlan 999"),
            device("sw2", TRUNK, QUIET, "switchport trunk native vlan 250"));
    assertThat(said(outcome))
        .singleElement()
        .asString()
        .startsWith("weakens link-native-differs sw2: ");
  }

  @Test
  void a_filter_at_one_end_keeps_the_trees_from_noticing_two_native_vlans() throws IOException {
    AuditOutcome outcome =
        run(
            link("mode: trunk, negotiate: false"),
            device("sw1", TRUNK, QUIET, "switchport trunk native vlan 999"),
            device(
                "sw2",
                TRUNK,
                QUIET,
                "switchport trunk native vlan 250",
                "spanning-tree bpdufilter enable"));
    assertThat(said(outcome))
        .hasSize(2)
        .anyMatch(
            one ->
                one.startsWith("weakens link-native-differs sw1: Untagged frames of parked (999)")
                    && one.contains("they become one broadcast domain here"));
  }

  @Test
  void modes_that_negotiation_settles_alike_are_alike_and_else_told_once_by_the_port()
      throws IOException {
    String answers = "switchport mode dynamic auto";
    AuditOutcome both = run(link("mtu: 1500"), device("sw1", answers), device("sw2", answers));
    assertThat(conforming(both, "link-mode-differs")).isEqualTo(1);
    AuditOutcome one =
        run(
            link("mode: trunk, negotiate: false"),
            device("sw1", TRUNK, QUIET),
            device("sw2", answers));
    assertThat(said(one))
        .singleElement()
        .asString()
        .contains(" negotiation-open sw2: ")
        .contains("Tagged frames are dropped at sw2 GigabitEthernet1/0/48");
  }

  @Test
  void a_port_left_to_negotiation_does_not_reach_a_routed_one() throws IOException {
    assertThat(
            said(
                run(
                    link("mtu: 1500"),
                    device("sw1", "switchport mode dynamic auto"),
                    device("sw2", "no switchport", "ip address 192.0.2.1 255.255.255.0"))))
        .singleElement()
        .asString()
        .contains(" negotiation-open sw1: ")
        .endsWith(" One end routes and the other bridges: no VLAN crosses the link.");
  }

  @Test
  void a_bundle_at_one_end_of_a_link_whose_role_is_silent_is_a_clash() throws IOException {
    String design = link("mode: trunk, negotiate: false");
    AuditOutcome outcome =
        run(
            design,
            device("sw1", TRUNK, QUIET, "channel-group 3 mode active"),
            device("sw2", TRUNK, QUIET));
    assertThat(said(outcome)).anyMatch(one -> one.startsWith("weakens link-bundle-clash sw1: "));
    AuditOutcome fits =
        run(
            design,
            device("sw1", TRUNK, QUIET, "channel-group 3 mode active"),
            device("sw2", TRUNK, QUIET, "channel-group 7 mode passive"));
    assertThat(said(fits)).noneMatch(one -> one.contains("clash"));
    assertThat(conforming(fits, "link-bundle-clash")).isEqualTo(1);
  }

  @Test
  void a_script_leaves_open_what_is_not_counted_as_conforming() throws IOException {
    AuditOutcome outcome =
        run(
            link("mode: trunk, native: parked"),
            device("sw1", TRUNK, "switchport trunk native vlan 999"),
            "hostname sw2\ninterface GigabitEthernet1/0/48\nswitchport mode trunk\nexit\n");
    assertThat(conforming(outcome, "link-native-differs")).isZero();
    assertThat(said(outcome)).noneMatch(one -> one.contains("link-native-differs sw1"));
    assertThat(said(outcome)).filteredOn(one -> one.contains("native")).hasSize(1);
  }

  @Test
  void an_end_whose_config_is_not_there_is_not_asked() throws IOException {
    AuditOutcome outcome = run(link("mode: trunk, negotiate: false"), device("sw1", TRUNK, QUIET));
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().startsWith("link-"))
        .isNotEmpty()
        .allMatch(count -> count.conforms() + count.differs() + count.undecided() == 0);
  }

  @Test
  void ports_of_a_pair_whose_roles_ask_them_unalike_are_told_though_both_are_as_designed()
      throws IOException {
    String rest = "switchport trunk allowed vlan 220";
    AuditOutcome outcome =
        run(
            pair("mode: trunk, native: parked", "mode: trunk, native: office"),
            device("sw1", TRUNK, rest, "switchport trunk native vlan 999"),
            device("sw2", TRUNK, rest, "switchport trunk native vlan 250"));
    assertThat(said(outcome)).anyMatch(one -> one.startsWith("weakens pair-differs sw1: "));
  }

  @Test
  void several_differences_of_a_pair_are_one_finding_and_one_subject() throws IOException {
    AuditOutcome outcome =
        run(
            pair("mode: trunk", "mode: trunk"),
            device("sw1", TRUNK, QUIET, "speed 1000", "storm-control broadcast level 5.00"),
            device("sw2", TRUNK, QUIET));
    assertThat(outcome.findings()).filteredOn(one -> one.rule().equals("pair-differs")).hasSize(1);
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("pair-differs"))
        .singleElement()
        .satisfies(count -> assertThat(count.differs()).isEqualTo(1));
  }

  @Test
  void a_vlan_that_both_uplinks_lack_is_no_difference_between_them() throws IOException {
    String lacks = "switchport trunk allowed vlan 250";
    AuditOutcome outcome =
        run(
            pair(
                "mode: trunk, tagged: [hypervisor, office]",
                "mode: trunk, tagged: [hypervisor, office]"),
            device("sw1", TRUNK, lacks),
            device("sw2", TRUNK, lacks));
    assertThat(outcome.findings())
        .filteredOn(one -> one.rule().equals("tagged-vlan-missing"))
        .hasSize(2)
        .noneMatch(one -> one.consequence().contains(" only: "));
    assertThat(conforming(outcome, "pair-differs")).isEqualTo(1);
  }
}
