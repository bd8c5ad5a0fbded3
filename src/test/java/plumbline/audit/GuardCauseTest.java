package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.result.Result.RuleCount;

/**
 * Whole audits of what guards and filters do on host ports and links (sections 4 and 6 of the
 * product contract; how guards, filters and defaults act on each other is common practice, no
 * source).
 */
class GuardCauseTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        voice-a: {id: 231}
        office: {id: 250}
        parked: {id: 999, unused: true}
      roles:
        desk: {mode: access, access: office, fast-start: true, bpdu-guard: true}
        guarded: {mode: access, access: office, bpdu-guard: true}
        plain: {mode: access, access: office}
        filtered: {mode: access, access: office, bpdu-guard: true, bpdu-filter: true}
        limited: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], negotiate: false, port-security: true}
        uplink: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], negotiate: false}
        link: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], negotiate: false}
        slow-link: {like: link, fast-start: false}
        guarded-link: {like: link, bpdu-guard: true}
        routed: {mode: routed, bpdu-guard: true, fast-start: false}
      switches:
        sw1: {PORTS}
        sw2: {spanning-tree: {root-of: [hypervisor, office]}}
      """;
  private static final String OWN =
      "hostname sw1\n!\nvtp mode transparent\n!\nspanning-tree mode rapid-pvst\n!\n"
          + "vlan 220,231,250,999\n!\n";
  private static final String ACCESS = " switchport access vlan 250\n switchport mode access\n";
  private static final String TRUNK =
      " switchport trunk native vlan 999\n switchport trunk allowed vlan 220,231\n"
          + " switchport mode trunk\n switchport nonegotiate\n";
  private static final String PORT = "interface GigabitEthernet1/0/1\n";
  private static final String END = "!\nend\n";

  private static AuditOutcome run(String design, String config) {
    AuditOutcome outcome = RuleCaseRun.run(design, config);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> rules(AuditOutcome outcome) {
    return outcome.findings().stream().map(one -> one.severity() + " " + one.rule()).toList();
  }

  private static AuditOutcome sheet(String role, String global, String lines) {
    String design = DESIGN.replace("PORTS", "ports: {Gi1/0/1: " + role + "}");
    return run(design, OWN + global.replace('|', '\n') + PORT + lines.replace('|', '\n') + END);
  }

  private static AuditOutcome link(String role, String far, String global, String lines) {
    String design =
        DESIGN.replace("PORTS", "")
            + "links:\n  - {ends: [sw1 Gi1/0/1, "
            + far
            + "], role: "
            + role
            + "}\n";
    return run(design, OWN + global.replace('|', '\n') + PORT + lines.replace('|', '\n') + END);
  }

  private static AuditOutcome host(String role, String lines) {
    String design =
        DESIGN.replace("PORTS", "")
            + "hosts: {vm1: {ports: {nic0: {to: sw1 Gi1/0/1, role: "
            + role
            + "}}}}\n";
    return run(design, OWN + PORT + lines.replace('|', '\n') + END);
  }

  private static Finding only(AuditOutcome outcome) {
    assertThat(outcome.findings()).as("%s", rules(outcome)).hasSize(1);
    return outcome.findings().get(0);
  }

  private static RuleCount count(AuditOutcome outcome, String rule) {
    return outcome.checks().stream()
        .filter(one -> one.rule().equals(rule))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          guarded, "", " spanning-tree bpduguard enable|", ""
          guarded, "", "", "weakens bpdu-guard-missing"
          guarded, "spanning-tree portfast bpduguard default|", "", "weakens bpdu-guard-missing"
          desk, "spanning-tree portfast bpduguard default|", " spanning-tree portfast|", ""
          desk, "spanning-tree portfast bpduguard default|", "", "weakens fast-start-missing"
          desk, "", "", "weakens bpdu-guard-missing, weakens fast-start-missing"
          desk, "spanning-tree portfast bpduguard default|", " spanning-tree portfast| spanning-tree bpduguard disable|", "weakens bpdu-guard-missing"
          desk, "spanning-tree portfast default|spanning-tree portfast bpduguard default|", "", ""
          guarded, "", " spanning-tree bpduguard enable| spanning-tree bpdufilter enable|", "weakens bpdu-filter-set"
          guarded, "", " spanning-tree bpdufilter enable|", "weakens bpdu-filter-set, weakens bpdu-guard-missing"
          filtered, "", " spanning-tree bpduguard enable| spanning-tree bpdufilter enable|", "weakens bpdu-guard-missing"
          plain, "", " spanning-tree bpdufilter enable|", "weakens bpdu-filter-set"
          desk, "spanning-tree portfast bpdufilter default|spanning-tree portfast bpduguard default|", " spanning-tree portfast|", ""
          """)
  void on_an_access_port_one_cause_is_one_finding(
      String role, String global, String lines, String expected) {
    AuditOutcome outcome = sheet(role, global, ACCESS + lines);
    assertThat(String.join(", ", rules(outcome))).isEqualTo(expected);
  }

  @Test
  void a_guard_that_is_lost_with_fast_start_is_told_where_fast_start_is() {
    Finding finding = only(sheet("desk", "spanning-tree portfast bpduguard default|", ACCESS));
    assertThat(finding.consequence())
        .isEqualTo(
            "The desk device waits up to 30 seconds after every link-up before the port forwards."
                + " A switch that is connected in place of the desk device, or behind it, joins the"
                + " spanning tree: it can become root or close a loop.");
  }

  @Test
  void a_port_in_the_wrong_mode_keeps_the_causes_that_the_mode_does_not_make() {
    assertThat(rules(sheet("guarded", "", TRUNK)))
        .containsExactly("weakens bpdu-guard-missing", "breaks mode-differs");
    assertThat(
            rules(
                sheet(
                    "desk",
                    "spanning-tree portfast default|spanning-tree portfast bpduguard default|",
                    TRUNK)))
        .as("both globals reach the port again once it is an access port")
        .containsExactly("breaks mode-differs");
    assertThat(rules(sheet("guarded", "", " no switchport\n")))
        .containsExactly("breaks mode-differs");
  }

  @Test
  void a_routed_port_has_no_spanning_tree_to_ask_about() {
    AuditOutcome outcome = sheet("routed", "", " no switchport\n");
    assertThat(rules(outcome)).isEmpty();
    assertThat(count(outcome, "bpdu-guard-missing").conforms()).isZero();
    assertThat(count(outcome, "fast-start-on-switch-link").conforms()).isZero();
    assertThat(count(outcome, "bpdu-filter-set").conforms()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          link, "sw2 Gi1/0/1", "", "", ""
          link, "sw2 Gi1/0/1", "", " spanning-tree bpduguard enable|", "weakens guard-on-switch-link"
          link, "outside", "", " spanning-tree bpduguard enable|", "weakens guard-on-switch-link"
          guarded-link, "outside", "", " spanning-tree bpduguard enable|", ""
          guarded-link, "outside", "", "", "weakens bpdu-guard-missing"
          guarded-link, "sw2 Gi1/0/1", "", " spanning-tree bpduguard enable|", "weakens guard-on-switch-link"
          guarded-link, "sw2 Gi1/0/1", "", "", ""
          link, "sw2 Gi1/0/1", "spanning-tree portfast bpduguard default|", "", ""
          link, "sw2 Gi1/0/1", "spanning-tree portfast bpduguard default|", " spanning-tree portfast trunk|", "weakens guard-on-switch-link"
          link, "sw2 Gi1/0/1", "spanning-tree portfast bpduguard default|", " spanning-tree portfast|", ""
          slow-link, "sw2 Gi1/0/1", "", " spanning-tree portfast|", ""
          slow-link, "sw2 Gi1/0/1", "spanning-tree portfast default|", "", ""
          slow-link, "sw2 Gi1/0/1", "", " spanning-tree portfast network|", ""
          slow-link, "sw2 Gi1/0/1", "", " spanning-tree portfast trunk|", "weakens fast-start-on-switch-link"
          slow-link, "sw2 Gi1/0/1", "spanning-tree portfast bpduguard default|", " spanning-tree portfast trunk|", "weakens fast-start-on-switch-link"
          slow-link, "sw2 Gi1/0/1", "", " spanning-tree portfast trunk| spanning-tree bpduguard enable|", "weakens fast-start-on-switch-link, weakens guard-on-switch-link"
          slow-link, "sw2 Gi1/0/1", "spanning-tree portfast bpduguard default|", " spanning-tree portfast trunk| spanning-tree guard root|", "weakens fast-start-on-switch-link, weakens guard-on-switch-link"
          link, "sw2 Gi1/0/1", "", " spanning-tree guard root|", "weakens guard-on-switch-link"
          link, "outside", "", " spanning-tree guard root|", ""
          link, "sw2 Gi1/0/1", "", " spanning-tree guard loop|", ""
          link, "sw2 Gi1/0/1", "", " spanning-tree guard root| spanning-tree bpdufilter enable|", "weakens bpdu-filter-set"
          link, "sw2 Gi1/0/1", "", " switchport port-security|", "weakens port-security-on-uplink"
          link, "outside", "", " switchport port-security|", "weakens port-security-on-uplink"
          """)
  void on_a_link_one_cause_is_one_finding(
      String role, String far, String global, String lines, String expected) {
    AuditOutcome outcome = link(role, far, global, TRUNK + lines);
    assertThat(String.join(", ", rules(outcome))).isEqualTo(expected);
  }

  @Test
  void both_guards_on_one_link_are_one_finding_that_tells_both() {
    Finding finding =
        only(
            link(
                "link",
                "sw2 Gi1/0/1",
                "",
                TRUNK + " spanning-tree guard root| spanning-tree bpduguard enable|"));
    assertThat(finding.found()).isEqualTo("BPDU guard and root guard");
    assertThat(finding.designed())
        .isEqualTo(
            "no BPDU guard on the link to sw2 GigabitEthernet1/0/1; no root guard towards sw2, the"
                + " planned root of hypervisor (220)");
    assertThat(finding.consequence())
        .isEqualTo(
            "The first BPDU from sw2 disables the port: the link is down, and stays down until"
                + " somebody reopens it or a recovery timer does. The port blocks hypervisor (220)"
                + " as soon as sw2 claims to be its root, as planned: nothing of it crosses the"
                + " link.");
    assertThat(finding.evidence()).hasSize(2);
  }

  @Test
  void root_guard_counts_for_all_planned_roots_where_one_tree_spans_several_vlans() {
    String mst = OWN.replace("rapid-pvst", "mst");
    String design =
        DESIGN.replace("PORTS", "")
            + "links:\n  - {ends: [sw1 Gi1/0/1, sw2 Gi1/0/1], role: link}\n";
    Finding finding = only(run(design, mst + PORT + TRUNK + " spanning-tree guard root\n" + END));
    assertThat(finding.vlans()).hasToString("220,250");
  }

  @Test
  void a_bundle_is_judged_and_not_its_members() {
    String design =
        DESIGN.replace("PORTS", "")
            + "links:\n  - {ends: [sw1 Po1, sw2 Po1], role: slow-link,"
            + " members: [[Gi1/0/49, Gi1/0/49]]}\n";
    String member = "interface GigabitEthernet1/0/49\n" + TRUNK;
    String group = " channel-group 1 mode active\n!\n";
    String bundle = "interface Port-channel1\n" + TRUNK;
    String guard = " spanning-tree bpduguard enable\n spanning-tree portfast trunk\n";
    assertThat(rules(run(design, OWN + member + guard + group + bundle + END))).isEmpty();
    assertThat(rules(run(design, OWN + member + group + bundle + guard + END)))
        .containsExactly("weakens fast-start-on-switch-link", "weakens guard-on-switch-link");
    assertThat(rules(run(design, OWN + member + guard + group + END)))
        .as("without a stanza for the bundle the member's lines count")
        .containsExactly("weakens fast-start-on-switch-link", "weakens guard-on-switch-link");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          uplink, "", ""
          uplink, " switchport port-security|", "weakens port-security-on-uplink"
          limited, " switchport port-security|", ""
          """)
  void a_hosts_trunk_may_not_limit_addresses_unless_its_role_wants_it(
      String role, String lines, String expected) {
    assertThat(String.join(", ", rules(host(role, TRUNK + lines)))).isEqualTo(expected);
  }

  @Test
  void one_machine_behind_an_access_port_may_be_limited() {
    AuditOutcome outcome = host("plain", ACCESS + " switchport port-security\n");
    assertThat(rules(outcome)).isEmpty();
    assertThat(count(outcome, "port-security-on-uplink").conforms()).isZero();
  }

  @Test
  void a_shut_port_is_one_finding_that_names_what_remains() {
    Finding finding = only(host("uplink", TRUNK + " shutdown\n switchport port-security\n"));
    assertThat(finding.rule()).isEqualTo("port-shut");
    assertThat(finding.consequence())
        .endsWith(
            "When this is repaired, more remains: the number of addresses is limited on a host's"
                + " trunk or on a link. Now vm1 is cut off from hypervisor (220) and voice-a"
                + " (231).");
  }

  @Test
  void in_a_script_an_absent_line_leaves_each_rule_open_once() {
    String script =
        """
        conf t
        hostname sw1
        interface GigabitEthernet1/0/1
        switchport mode trunk
        switchport nonegotiate
        switchport trunk native vlan 999
        switchport trunk allowed vlan 220,231
        end
        wr
        """;
    String design =
        DESIGN.replace("PORTS", "")
            + "links:\n  - {ends: [sw1 Gi1/0/1, sw2 Gi1/0/1], role: slow-link}\n";
    assertThat(rules(run(design, script)))
        .contains(
            "unverified bpdu-filter-set",
            "unverified fast-start-on-switch-link",
            "unverified guard-on-switch-link",
            "unverified port-security-on-uplink")
        .noneMatch(one -> one.startsWith("weakens"));
    assertThat(rules(run(design, script.replace("end", "spanning-tree bpduguard enable\nend"))))
        .contains("weakens guard-on-switch-link");
  }

  @Test
  void spellings_of_the_other_dialects_mean_the_same() {
    String design =
        DESIGN.replace("PORTS", "").replace("sw1: {}", "sw1: {dialect: data-centre}")
            + "links:\n  - {ends: [sw1 Ethernet1/1, sw2 Ethernet1/1], role: slow-link}\n";
    String own =
        "hostname sw1\nspanning-tree mode rapid-pvst\nvlan 1,220,231,999\n"
            + "interface Ethernet1/1\n  switchport\n  switchport mode trunk\n"
            + "  switchport trunk native vlan 999\n  switchport trunk allowed vlan 220,231\n"
            + "  no shutdown\n";
    assertThat(rules(run(design, own))).isEmpty();
    assertThat(rules(run(design, own + "  spanning-tree port type network\n"))).isEmpty();
    assertThat(rules(run(design, own + "  spanning-tree port type edge trunk\n")))
        .containsExactly("weakens fast-start-on-switch-link");
    assertThat(rules(run(design, own + "  spanning-tree port type edge\n"))).isEmpty();
    assertThat(
            rules(
                run(
                    design,
                    own.replace(
                            "spanning-tree mode",
                            "spanning-tree port type edge bpduguard default\nspanning-tree mode")
                        + "  spanning-tree port type edge trunk\n")))
        .containsExactly("weakens fast-start-on-switch-link");
  }
}
