package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.finding.Place;
import plumbline.finding.Proof;
import plumbline.result.Result.RuleCount;
import plumbline.setting.Evidence;

/**
 * Whole audits of single ports and bundles: which cause is given, and where (section 6 of the
 * product contract; what a port does with frames in which mode is common practice, no source).
 */
class PortCauseTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        voice-a: {id: 231}
        office: {id: 250}
        parked: {id: 999, unused: true}
      roles:
        uplink: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], fast-start: true, negotiate: false}
        link: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], negotiate: false}
        desk: {mode: access, access: office, fast-start: true}
        only-access: {access: office, fast-start: true}
        only-voice: {voice: voice-a}
        only-tagged: {tagged: [hypervisor]}
        only-native: {native: parked}
        routed: {mode: routed, fast-start: true}
        fast: {fast-start: true}
      switches:
        sw1: {ports: {Gi1/0/1: ROLE}}
      """;
  private static final String OWN =
      "hostname sw1\n!\nvtp mode transparent\n!\nvlan 220,231,250,999\n!\n";
  private static final String TRUNK =
      " switchport trunk native vlan 999\n switchport trunk allowed vlan 220,231\n"
          + " switchport mode trunk\n switchport nonegotiate\n";
  private static final String PORT = "interface GigabitEthernet1/0/1\n";
  private static final String FAST = " spanning-tree portfast trunk\n";
  private static final String END = "!\nend\n";

  private static AuditOutcome run(String role, String config) {
    AuditOutcome outcome = RuleCaseRun.run(DESIGN.replace("ROLE", role), config);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> ids(AuditOutcome outcome) {
    return outcome.findings().stream().map(one -> one.severity() + " " + one.id()).toList();
  }

  private static Finding only(AuditOutcome outcome, String rule) {
    List<Finding> found =
        outcome.findings().stream().filter(one -> one.rule().equals(rule)).toList();
    assertThat(found).as("%s among %s", rule, ids(outcome)).hasSize(1);
    return found.get(0);
  }

  private static List<Integer> lines(Finding finding) {
    return finding.evidence().stream()
        .map(Proof::evidence)
        .filter(Evidence.Line.class::isInstance)
        .map(line -> ((Evidence.Line) line).line())
        .toList();
  }

  private static String bundle(String tail, String... members) {
    StringBuilder text = new StringBuilder(OWN);
    for (int i = 0; i < members.length; i++) {
      text.append("interface GigabitEthernet1/0/").append(49 + i).append('\n');
      text.append(members[i]).append(" channel-group 1 mode active\n!\n");
    }
    return text + tail + END;
  }

  private static AuditOutcome bundled(String config) {
    String design =
        DESIGN.replace("{ports: {Gi1/0/1: ROLE}}", "{}")
            + "  sw2: {}\nlinks:\n  - {ends: [sw1 Po1, sw2 Po1], role: link,"
            + " members: [[Gi1/0/49, Gi1/0/49], [Gi1/0/50, Gi1/0/50]]}\n";
    AuditOutcome outcome = RuleCaseRun.run(design, config);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  @Test
  void without_a_bundle_stanza_every_member_is_judged() {
    String wrong = TRUNK.replace("220,231", "220,231,250");
    String id =
        "weakens tagged-vlan-extra/sw1/GigabitEthernet1/0/%d/member of link to sw2"
            + " Port-channel1";
    assertThat(ids(bundled(bundle("", TRUNK, TRUNK)))).isEmpty();
    assertThat(ids(bundled(bundle("", TRUNK, wrong)))).containsExactly(id.formatted(50));
    assertThat(ids(bundled(bundle("", wrong, TRUNK)))).containsExactly(id.formatted(49));
  }

  @Test
  void a_bundle_stanza_that_a_later_line_removes_is_none() {
    String stanza = "interface Port-channel1\n" + TRUNK + "!\nno interface Port-channel1\n";
    assertThat(ids(bundled(bundle(stanza, TRUNK, TRUNK.replace("220,231", "220")))))
        .containsExactly(
            "weakens tagged-vlan-missing/sw1/GigabitEthernet1/0/50/member of link to sw2"
                + " Port-channel1");
  }

  @Test
  void a_bundle_stanza_speaks_for_its_members() {
    String stanza = "interface Port-channel1\n" + TRUNK;
    assertThat(ids(bundled(bundle(stanza, TRUNK, TRUNK.replace("220,231", "220")))))
        .containsExactly(
            "weakens bundle-member-differs/sw1/GigabitEthernet1/0/50/member of link to sw2"
                + " Port-channel1");
    String other = TRUNK.replace("220,231", "220");
    assertThat(ids(bundled(bundle(stanza, other, other))))
        .containsExactly(
            "breaks bundle-member-differs/sw1/GigabitEthernet1/0/49/member of link to sw2"
                + " Port-channel1",
            "breaks bundle-member-differs/sw1/GigabitEthernet1/0/50/member of link to sw2"
                + " Port-channel1");
  }

  @ParameterizedTest
  @CsvSource({
    "only-access, switchport mode trunk, switchport access vlan 250, mode access",
    "only-access, no switchport, switchport access vlan 250, mode access",
    "only-access, switchport mode trunk, description none, mode access",
    "only-voice, switchport mode trunk, switchport voice vlan 231, mode access",
    "only-tagged, switchport mode access, switchport trunk allowed vlan 220, mode trunk",
    "only-native, switchport mode access, switchport trunk native vlan 999, mode trunk",
    "only-tagged, no switchport, description none, mode trunk",
  })
  void a_role_without_a_mode_implies_the_one_in_which_its_vlans_work(
      String role, String mode, String other, String implied) {
    String lines = " " + mode + "\n " + other + "\n spanning-tree portfast\n";
    AuditOutcome outcome = run(role, OWN + PORT + lines + END);
    assertThat(only(outcome, "mode-differs").designed()).isEqualTo(implied);
    assertThat(outcome.findings())
        .extracting(Finding::rule)
        .as("what the wrong mode leaves without effect is no finding")
        .isSubsetOf("mode-differs", "negotiation-open");
  }

  @Test
  void a_role_without_a_mode_conforms_in_the_implied_one() {
    String access = " switchport mode access\n switchport access vlan 250\n";
    assertThat(ids(run("only-access", OWN + PORT + access + " spanning-tree portfast\n" + END)))
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "uplink, no switchport, description none",
    "uplink, switchport mode private-vlan host, spanning-tree portfast",
    "desk, no switchport, description none",
    "desk, switchport mode dot1q-tunnel, spanning-tree portfast",
    "desk, switchport mode trunk, spanning-tree portfast",
    "uplink, switchport mode access, spanning-tree portfast",
  })
  void fast_start_waits_for_the_right_mode(String role, String mode, String other) {
    AuditOutcome outcome = run(role, OWN + PORT + " " + mode + "\n " + other + "\n" + END);
    assertThat(outcome.findings())
        .extracting(Finding::rule)
        .contains("mode-differs")
        .doesNotContain("fast-start-missing", "fast-start-without-effect");
  }

  @ParameterizedTest
  @CsvSource({
    "uplink, spanning-tree loopguard default, switchport mode access, true",
    "desk, spanning-tree loopguard default, switchport mode trunk, true",
    "desk, spanning-tree portfast default, switchport mode trunk, false",
    "uplink, spanning-tree loopguard default, no switchport, false",
  })
  void fast_start_that_no_mode_brings_is_missing_beside_a_wrong_mode(
      String role, String global, String mode, boolean missing) {
    AuditOutcome outcome = run(role, OWN + global + "\n" + PORT + " " + mode + "\n" + END);
    assertThat(outcome.findings()).extracting(Finding::rule).contains("mode-differs");
    assertThat(outcome.findings().stream().anyMatch(one -> one.rule().equals("fast-start-missing")))
        .isEqualTo(missing);
  }

  @ParameterizedTest
  @CsvSource({"routed", "fast"})
  void a_routed_port_is_not_asked_for_fast_start(String role) {
    AuditOutcome outcome = run(role, OWN + PORT + " no switchport\n" + END);
    assertThat(ids(outcome)).isEmpty();
    assertThat(outcome.checks()).contains(new RuleCount("fast-start-missing", 0, 0, 0));
  }

  @ParameterizedTest
  @CsvSource({
    "'', spanning-tree portfast network",
    "'', spanning-tree port type network",
    "spanning-tree portfast network default, description none",
  })
  void a_network_port_towards_a_host_blocks(String global, String line) {
    AuditOutcome outcome =
        run("uplink", OWN + global + "\n" + PORT + TRUNK + " " + line + "\n" + END);
    assertThat(ids(outcome))
        .containsExactly("breaks fast-start-missing/sw1/GigabitEthernet1/0/1/uplink");
    assertThat(outcome.findings().get(0).consequence())
        .isEqualTo(
            "The uplink device has no connection: it sends no BPDUs, and without them the port"
                + " stays blocked.");
  }

  @Test
  void an_extra_vlan_of_unknown_existence_is_unverified() {
    String server = OWN.replace("transparent", "server");
    String extra = PORT + TRUNK.replace("220,231", "220,231,777") + FAST + END;
    AuditOutcome outcome = run("uplink", server + extra);
    assertThat(ids(outcome))
        .containsExactly("unverified tagged-vlan-extra/sw1/GigabitEthernet1/0/1/uplink");
    assertThat(outcome.findings().get(0).found())
        .isEqualTo(
            "cannot be told: VLAN 777 allowed as well, which may exist here: a server or client"
                + " keeps its VLAN list outside the config");
    assertThat(ids(run("uplink", server.replace("!\nvlan", "!\nno vlan 777\nvlan") + extra)))
        .as("removed by a line: it does not exist")
        .containsExactly("untidy tagged-vlan-extra/sw1/GigabitEthernet1/0/1/uplink");
  }

  @Test
  void extra_vlans_that_exist_nowhere_are_not_listed() {
    AuditOutcome outcome =
        run(
            "uplink",
            OWN.replace(",250", "") + PORT + TRUNK.replace("220,231", "220-4094") + FAST + END);
    Finding extra = only(outcome, "tagged-vlan-extra");
    assertThat(extra.severity()).hasToString("untidy");
    assertThat(extra.vlans().isEmpty()).isTrue();
  }

  @Test
  void members_of_a_bundle_with_a_stanza_do_not_live_in_a_vlan_by_their_own_lines() {
    String access = " switchport access vlan 999\n switchport mode access\n";
    String five =
        "interface Port-channel5\n"
            + access
            + "interface GigabitEthernet1/0/40\n"
            + access
            + " channel-group 5 mode active\n";
    String uplink = OWN + PORT + TRUNK + FAST;
    assertThat(ids(run("uplink", uplink + five + END)))
        .containsExactly("weakens native-vlan-in-use/sw1/Port-channel5/");
    String loose = five.substring(five.indexOf("interface Gig"));
    assertThat(ids(run("uplink", uplink + loose + END)))
        .containsExactly("weakens native-vlan-in-use/sw1/GigabitEthernet1/0/40/");
  }

  @ParameterizedTest
  @CsvSource({"server", "client", "transparent"})
  void a_removed_vlan_is_proved_by_the_line_that_removes_it(String mode) {
    String config =
        OWN.replace("transparent", mode) + PORT + TRUNK + FAST + "!\nno vlan 231\n" + END;
    Finding missing = only(run("uplink", config), "vlan-not-created");
    assertThat(missing.found()).isEqualTo("voice-a (231) removed");
    assertThat(lines(missing)).containsExactly(14);
  }

  @Test
  void a_removed_and_an_absent_vlan_are_told_apart() {
    String config = OWN.replace("220,231,", "") + "no vlan 231\n!\n" + PORT + TRUNK + FAST + END;
    Finding missing = only(run("uplink", config), "vlan-not-created");
    assertThat(missing.found())
        .isEqualTo(
            "voice-a (231) removed; hypervisor (220) not created; the switch keeps a list of its"
                + " own");
    assertThat(lines(missing)).containsExactly(3, 7);
  }

  @Test
  void what_a_script_leaves_open_is_in_the_order_of_ports_and_of_lines() {
    String design = DESIGN.replace("Gi1/0/1: ROLE", "Gi1/0/2: uplink, Gi1/0/10: uplink");
    String script =
        "conf t\nhostname sw1\ninterface Gi1/0/10\nswitchport mode trunk\n"
            + "interface Gi1/0/2\nswitchport mode trunk\nend\n";
    Finding shut = only(RuleCaseRun.run(design, script), "port-shut");
    assertThat(shut.others().stream().map(Place::toString))
        .containsExactly("sw1 GigabitEthernet1/0/2", "sw1 GigabitEthernet1/0/10");
    assertThat(lines(shut)).isSorted().contains(3, 5);
  }

  @Test
  void a_default_that_differs_between_families_is_one_finding_of_each_rule() {
    String design = DESIGN.replace("Gi1/0/1: ROLE", "E1/1: desk, E1/2: desk");
    String port = " switchport access vlan 250\n spanning-tree portfast\n";
    String config =
        "hostname sw1\nvlan 250\ninterface ethernet 1/1\n"
            + port
            + "interface ethernet 1/2\n"
            + port
            + "end\n";
    AuditOutcome outcome = RuleCaseRun.run(design, config);
    assertThat(ids(outcome))
        .containsExactly("unverified port-shut/sw1//", "unverified spanning-tree-off/sw1//");
    assertThat(outcome.findings().get(0).others()).hasSize(2);
  }

  @Test
  void a_silent_rule_hides_no_other() {
    String shut = OWN + PORT + " shutdown\n" + TRUNK.replace("220,231", "220") + FAST + END;
    assertThat(ids(silent("port-shut", shut)))
        .containsExactly("weakens tagged-vlan-missing/sw1/GigabitEthernet1/0/1/uplink");
    String inUse = OWN + PORT + TRUNK.replace("native vlan 999", "native vlan 250") + FAST + END;
    assertThat(ids(silent("native-vlan-in-use", inUse)))
        .containsExactly("weakens native-vlan-differs/sw1/GigabitEthernet1/0/1/uplink");
    String client =
        OWN.replace("transparent", "client").replace("231,", "") + PORT + TRUNK + FAST + END;
    AuditOutcome open = silent("vlan-database-unknown", client);
    assertThat(ids(open)).containsExactly("unverified vlan-not-created/sw1//");
    assertThat(open.findings().get(0).found())
        .isEqualTo(
            "cannot be told: whether voice-a (231) exists here: a server or client keeps its VLAN"
                + " list outside the config");
  }

  private static AuditOutcome silent(String rule, String config) {
    return RuleCaseRun.run(
        DESIGN.replace("ROLE", "uplink") + "rules: {silent: [" + rule + "]}\n", config);
  }

  @Test
  void a_native_vlan_that_the_switch_lacks_lets_no_frame_through() {
    String without = OWN.replace(",250,", ",") + PORT + FAST;
    String office =
        TRUNK.replace("native vlan 999", "native vlan 250").replace("0,231", "0,231,250");
    assertThat(only(run("uplink", without + office + END), "native-vlan-in-use").consequence())
        .isEqualTo(
            "Untagged frames of the uplink device are dropped, as office (250) does not exist here;"
                + " once it is in use here, they land among its hosts.");
    String seven = TRUNK.replace("native vlan 999", "native vlan 7").replace("0,231", "0,231,7");
    assertThat(only(run("uplink", without + seven + END), "native-vlan-differs").consequence())
        .isEqualTo("Untagged frames of the uplink device are dropped: VLAN 7 does not exist here.");
    String suspended = OWN + "vlan 250\n state suspend\n!\n" + PORT + FAST;
    assertThat(only(run("uplink", suspended + office + END), "native-vlan-in-use").consequence())
        .contains("as office (250) is suspended or shut here;");
    String printer =
        "interface GigabitEthernet1/0/9\n switchport access vlan 999\n switchport mode access\n";
    String unparked = OWN.replace(",999", "") + PORT + TRUNK + FAST + printer + END;
    assertThat(only(run("uplink", unparked), "native-vlan-in-use").consequence())
        .isEqualTo(
            "No frame of parked (999) passes now, as it does not exist here; once it is in use here,"
                + " untagged frames of a trunk meet what lives in it.");
  }

  @Test
  void an_interface_that_borrows_its_address_lives_in_its_vlan() {
    String borrowing =
        "interface Loopback0\n ip address 192.0.2.9 255.255.255.255\n!\n"
            + "interface Vlan999\n ip unnumbered Loopback0\n";
    Finding found =
        only(run("uplink", OWN + PORT + TRUNK + FAST + borrowing + END), "native-vlan-in-use");
    assertThat(found.place()).hasValue(Place.ofPort("sw1", "Vlan999"));
    assertThat(found.found()).isEqualTo("an address of the switch in parked (999)");
  }
}
