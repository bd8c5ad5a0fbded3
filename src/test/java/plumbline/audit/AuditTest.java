package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plumbline.design.DesignSwitch;
import plumbline.finding.Finding;
import plumbline.finding.Severity;
import plumbline.result.Result.RuleCount;
import plumbline.result.Result.SwitchCount;
import plumbline.rules.Group;
import plumbline.rules.InputCase;
import plumbline.rules.InputRule;
import plumbline.rules.Outcomes;
import plumbline.rules.RuleCatalogue;
import plumbline.rules.RuleInfo;

/**
 * Whole audits of small texts; what each must come to is the product contract's sections 4 and 6.
 */
class AuditTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        hypervisor: {id: 220}
        voice-a: {id: 231, telephony: true}
        parked: {id: 999, unused: true}
      roles:
        host-uplink: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], fast-start: true, negotiate: false}
        desk: {mode: access, access: hypervisor, fast-start: true}
        switch-link: {mode: trunk, native: parked, tagged: [hypervisor, voice-a], bundle: lacp, negotiate: false}
      switches:
        north-sw1:
          ports: {Gi1/0/20-22: spare, Gi1/0/30-31: desk}
        north-sw2: {}
      hosts:
        vmhost-n1:
          ports:
            nic0: {to: north-sw1 Gi1/0/1, role: host-uplink}
      links:
        - {ends: [north-sw1 Po1, north-sw2 Po1], role: switch-link, members: [[Gi1/0/49, Gi1/0/49], [Gi1/0/50, Gi1/0/50]]}
      """;
  private static final String HEAD =
      """
      hostname north-sw1
      !
      vtp mode transparent
      !
      vlan 220
      !
      vlan 231
      !
      """;
  private static final String UPLINK =
      """
      interface GigabitEthernet1/0/1
       switchport trunk native vlan 999
       switchport trunk allowed vlan 220,231
       switchport mode trunk
       switchport nonegotiate
       spanning-tree portfast trunk
      !
      """;
  private static final String BUNDLE =
      """
      interface Port-channel1
       switchport trunk native vlan 999
       switchport trunk allowed vlan 220,231
       switchport mode trunk
       switchport nonegotiate
      !
      """;
  private static final String MEMBERS =
      """
      interface GigabitEthernet1/0/49
       channel-group 1 mode active
      !
      interface GigabitEthernet1/0/50
       channel-group 1 mode active
      !
      """;
  private static final String SHEET =
      """
      interface GigabitEthernet1/0/20
       switchport access vlan 999
       shutdown
      !
      interface GigabitEthernet1/0/30
       switchport access vlan 220
       switchport mode access
       spanning-tree portfast
      !
      interface GigabitEthernet1/0/31
       switchport access vlan 220
       switchport mode access
       spanning-tree portfast
      !
      """;
  private static final String END = "end\n";

  private static List<String> ids(AuditOutcome outcome) {
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome.findings().stream()
        .map(finding -> finding.severity() + " " + finding.id())
        .toList();
  }

  private static List<String> audit(String... parts) {
    return ids(RuleCaseRun.run(DESIGN, String.join("", parts)));
  }

  @Test
  void a_switch_as_designed_gives_nothing() {
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, SHEET, END)).isEmpty();
  }

  @Test
  void a_spare_port_is_not_asked_what_roles_want() {
    AuditOutcome outcome =
        RuleCaseRun.run(DESIGN, String.join("", HEAD, UPLINK, BUNDLE, MEMBERS, SHEET, END));
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("port-shut"))
        .containsExactly(new RuleCount("port-shut", 6, 0, 0));
  }

  @Test
  void a_member_is_asked_only_whether_it_is_there_and_open() {
    String members =
        MEMBERS.replace(
            "0/50\n channel-group 1 mode active", "0/50\n channel-group 1 mode active\n shutdown");
    assertThat(audit(HEAD, UPLINK, BUNDLE, members, SHEET, END))
        .containsExactly(
            "weakens port-shut/north-sw1/GigabitEthernet1/0/50/member of link to north-sw2"
                + " Port-channel1");
  }

  @Test
  void without_a_stanza_for_the_bundle_its_members_lines_count() {
    String members =
        MEMBERS.replace(
            " channel-group",
            " switchport trunk native vlan 999\n switchport trunk allowed vlan 220\n"
                + " switchport mode trunk\n switchport nonegotiate\n channel-group");
    assertThat(audit(HEAD, UPLINK, members, SHEET, END))
        .containsExactly(
            "weakens tagged-vlan-missing/north-sw1/GigabitEthernet1/0/49/member of link to north-sw2"
                + " Port-channel1",
            "weakens tagged-vlan-missing/north-sw1/GigabitEthernet1/0/50/member of link to north-sw2"
                + " Port-channel1");
  }

  @Test
  void a_bundle_with_neither_stanza_nor_members_is_absent() {
    String members = MEMBERS.replace(" channel-group 1 mode active\n", "");
    assertThat(audit(HEAD, UPLINK, members, SHEET, END))
        .containsExactly(
            "weakens port-absent/north-sw1/Port-channel1/link to north-sw2 Port-channel1");
  }

  @Test
  void left_overs_of_the_wrong_mode_are_no_findings() {
    String access =
        UPLINK
            .replace("mode trunk", "mode access")
            .replace("native vlan 999", "native vlan 7")
            .replace("allowed vlan 220,231", "allowed vlan 5");
    assertThat(audit(HEAD, access, BUNDLE, MEMBERS, SHEET, END))
        .containsExactly("breaks mode-differs/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void a_dynamic_host_port_is_one_finding_and_never_conforms() {
    String dynamic =
        UPLINK
            .replace(
                " switchport mode trunk\n switchport nonegotiate\n",
                " switchport mode dynamic auto\n")
            .replace("portfast trunk", "portfast")
            .replace("allowed vlan 220,231", "allowed vlan 5");
    AuditOutcome outcome =
        RuleCaseRun.run(DESIGN, String.join("", HEAD, dynamic, BUNDLE, MEMBERS, SHEET, END));
    assertThat(ids(outcome))
        .containsExactly("breaks negotiation-open/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("mode-differs"))
        .as("the bundle and two desk ports")
        .containsExactly(new RuleCount("mode-differs", 3, 0, 0));
  }

  @Test
  void a_vlan_that_is_not_created_is_one_finding_of_the_switch() {
    assertThat(audit(HEAD.replace("vlan 231\n", ""), UPLINK, BUNDLE, MEMBERS, SHEET, END))
        .containsExactly("breaks vlan-not-created/north-sw1//");
  }

  @Test
  void an_unknown_vlan_list_is_one_finding_and_lets_nothing_else_conform_by_it() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            "hostname north-sw1\n!\nvtp mode client\n!\n"
                + String.join("", UPLINK, BUNDLE, MEMBERS, SHEET, END));
    assertThat(ids(outcome)).containsExactly("unverified vlan-database-unknown/north-sw1//");
    assertThat(outcome.checks()).contains(new RuleCount("vlan-not-created", 0, 0, 1));
  }

  @Test
  void a_native_vlan_that_is_tagged_counts_with_the_tagged_ones() {
    String tagging = "vlan dot1q tag native\n!\n";
    String design =
        DESIGN.replace("host-uplink: {mode: trunk, native: parked,", "host-uplink: {mode: trunk,");
    String uplink = UPLINK.replace("native vlan 999", "native vlan 220");
    String rest = String.join("", uplink, BUNDLE, MEMBERS, SHEET, END);
    assertThat(ids(RuleCaseRun.run(design, HEAD + tagging + rest))).isEmpty();
    assertThat(ids(RuleCaseRun.run(design, HEAD + rest)))
        .containsExactly(
            "breaks tagged-vlan-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void the_base_of_an_added_list_is_not_in_the_text() {
    String added = UPLINK.replace("allowed vlan 220,231", "allowed vlan add 220,231");
    assertThat(audit(HEAD, added, BUNDLE, MEMBERS, SHEET, END))
        .containsExactly(
            "unverified tagged-vlan-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void an_unknown_statement_is_one_finding_and_a_gap_of_its_own_where_that_is_silent() {
    String odd = UPLINK.replace("!\n", " switchport frobnicate native 5\n!\n");
    String text = String.join("", HEAD, odd, BUNDLE, MEMBERS, SHEET, END);
    AuditOutcome given = RuleCaseRun.run(DESIGN, text);
    assertThat(ids(given)).containsExactly("unverified statement-unknown/north-sw1//");
    assertThat(given.findings().get(0).consequence())
        .endsWith(
            "Left open by it, and not counted as conforming, are 6 checks: mode-differs,"
                + " native-vlan-differs, native-vlan-in-use, negotiation-open, tagged-vlan-extra,"
                + " tagged-vlan-missing on GigabitEthernet1/0/1.");
    assertThat(given.checks()).contains(new RuleCount("mode-differs", 3, 0, 1));
    AuditOutcome unheard = RuleCaseRun.run(DESIGN + "rules: {silent: [statement-unknown]}\n", text);
    assertThat(ids(unheard))
        .containsExactly("unverified mode-differs/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
    assertThat(unheard.findings().get(0).consequence())
        .endsWith(
            "Open by the same cause: native-vlan-differs, native-vlan-in-use, negotiation-open,"
                + " tagged-vlan-extra, tagged-vlan-missing.");
  }

  @Test
  void a_statement_that_the_design_vouches_for_leaves_nothing_open() {
    String odd = UPLINK.replace("!\n", " switchport frobnicate native 5\n!\n");
    String text = String.join("", HEAD, odd, BUNDLE, MEMBERS, SHEET, END);
    AuditOutcome vouched =
        RuleCaseRun.run(DESIGN + "harmless: ['Switchport  frobnicate *']\n", text);
    assertThat(ids(vouched)).isEmpty();
    assertThat(vouched.checks()).contains(new RuleCount("mode-differs", 4, 0, 0));
    AuditOutcome other = RuleCaseRun.run(DESIGN + "harmless: ['switchport frob']\n", text);
    assertThat(ids(other)).containsExactly("unverified statement-unknown/north-sw1//");
  }

  @Test
  void a_text_that_stops_is_one_finding_and_the_facts_before_the_cut_stand() {
    String wrong = UPLINK.replace("allowed vlan 220,231", "allowed vlan 220");
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            HEAD + wrong + BUNDLE + "interface GigabitEthernet1/0/30\n switchport access vl");
    assertThat(ids(outcome))
        .containsExactly(
            "unverified config-truncated/north-sw1//",
            "breaks tagged-vlan-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0");
  }

  @Test
  void a_script_is_silent_once_per_rule_and_its_lines_are_judged() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            """
            conf t
            hostname north-sw1
            interface GigabitEthernet1/0/1
            switchport trunk native vlan 999
            switchport trunk allowed vlan 220
            switchport mode trunk
            exit
            interface range GigabitEthernet1/0/30 - 31
            switchport mode access
            switchport access vlan 231
            end
            wr
            """);
    assertThat(ids(outcome))
        .contains(
            "breaks tagged-vlan-missing/north-sw1/GigabitEthernet1/0/1/vmhost-n1 nic0",
            "breaks access-vlan-differs/north-sw1/GigabitEthernet1/0/30/desk",
            "breaks access-vlan-differs/north-sw1/GigabitEthernet1/0/31/desk")
        .contains("unverified port-absent/north-sw1//", "unverified fast-start-missing/north-sw1//")
        .doesNotHaveDuplicates();
    assertThat(outcome.findings())
        .filteredOn(finding -> finding.severity() == Severity.UNVERIFIED)
        .allMatch(finding -> finding.place().orElseThrow().port().isEmpty());
  }

  @Test
  void a_header_that_names_no_clear_port_leaves_open_whether_others_are_absent() {
    String lost = UPLINK.replace("interface GigabitEthernet1/0/1", "interface Tw1/0/1");
    assertThat(audit(HEAD, lost, BUNDLE, MEMBERS, SHEET, END))
        .containsExactly(
            "unverified port-absent/north-sw1//", "unverified spare-port-open/north-sw1//");
  }

  @Test
  void a_port_in_the_unused_native_vlan_is_one_finding_at_that_port() {
    String intruder =
        "interface GigabitEthernet1/0/5\n switchport access vlan 999\n switchport mode access\n";
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, SHEET, intruder + "!\n", END))
        .containsExactly("weakens native-vlan-in-use/north-sw1/GigabitEthernet1/0/5/");
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, SHEET, intruder + " shutdown\n!\n", END))
        .isEmpty();
    assertThat(
            audit(
                HEAD,
                UPLINK,
                BUNDLE,
                MEMBERS,
                SHEET.replace(
                    "0/30\n switchport access vlan 220", "0/30\n switchport access vlan 999"),
                END))
        .containsExactly("breaks access-vlan-differs/north-sw1/GigabitEthernet1/0/30/desk");
  }

  @Test
  void an_address_in_the_unused_native_vlan_is_one_finding_at_its_interface() {
    String address = "interface Vlan999\n ip address 192.0.2.9 255.255.255.0\n!\n";
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, SHEET, address, END))
        .containsExactly("weakens native-vlan-in-use/north-sw1/Vlan999/");
  }

  @Test
  void fast_start_is_a_second_cause_only_where_the_right_mode_brings_none() {
    String global = "spanning-tree portfast default\n!\n";
    String sheet =
        SHEET.replace(
            "0/30\n switchport access vlan 220\n switchport mode access\n spanning-tree portfast\n",
            "0/30\n switchport mode trunk\n");
    assertThat(audit(HEAD, global, UPLINK, BUNDLE, MEMBERS, sheet, END))
        .containsExactly("breaks mode-differs/north-sw1/GigabitEthernet1/0/30/desk");
    // without the default the right mode alone brings no fast-start either: two causes
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, sheet, END))
        .containsExactly(
            "weakens fast-start-missing/north-sw1/GigabitEthernet1/0/30/desk",
            "breaks mode-differs/north-sw1/GigabitEthernet1/0/30/desk");
    String repaired =
        sheet.replace(
            "0/30\n switchport mode trunk",
            "0/30\n switchport mode access\n switchport access vlan 220");
    assertThat(audit(HEAD, UPLINK, BUNDLE, MEMBERS, repaired, END))
        .containsExactly("weakens fast-start-missing/north-sw1/GigabitEthernet1/0/30/desk");
  }

  @Test
  void silent_rules_are_left_out_and_what_they_would_explain_is_heard() {
    String design = DESIGN + "rules: {silent: [mode-differs]}\n";
    String access = UPLINK.replace("mode trunk", "mode access").replace("vlan 220,231", "vlan 5");
    AuditOutcome outcome =
        RuleCaseRun.run(design, String.join("", HEAD, access, BUNDLE, MEMBERS, SHEET, END));
    assertThat(outcome.findings())
        .extracting(Finding::rule)
        .contains("tagged-vlan-missing")
        .doesNotContain("mode-differs");
    assertThat(outcome.checks()).extracting(RuleCount::rule).doesNotContain("mode-differs");
  }

  @Test
  void every_rule_of_the_catalogue_is_counted_in_order() {
    AuditOutcome outcome = RuleCaseRun.run(DESIGN, HEAD + END);
    assertThat(outcome.checks())
        .extracting(RuleCount::rule)
        .isEqualTo(RuleCatalogue.ALL.stream().map(rule -> rule.info().id()).toList());
  }

  @Test
  void every_finding_of_a_bad_switch_has_both_places_and_words() {
    String bad =
        "interface GigabitEthernet1/0/1\n!\ninterface GigabitEthernet1/0/30\n shutdown\n!\n";
    List<Finding> findings = RuleCaseRun.run(DESIGN, HEAD + bad + END).findings();
    assertThat(findings).hasSizeGreaterThan(4);
    for (Finding finding : findings) {
      assertThat(finding.evidence()).as(finding.id()).isNotEmpty();
      assertThat(finding.design()).as(finding.id()).isPresent();
      assertThat(finding.designed()).as(finding.id()).isNotBlank();
      assertThat(finding.found()).as(finding.id()).isNotBlank();
      assertThat(finding.consequence()).as(finding.id()).endsWith(".");
    }
    assertThat(findings).extracting(Finding::id).doesNotHaveDuplicates();
  }

  @Test
  void a_rule_that_fails_is_named_without_text_of_the_config_and_the_others_go_on() {
    DesignSwitch gone = RuleCaseRun.design(DESIGN).switches().get("north-sw2");
    AuditOutcome outcome =
        Audit.run(
            new AuditInput(
                RuleCaseRun.design(DESIGN),
                List.of(),
                List.of(new AuditInput.MissingConfig(gone)),
                List.of(new AuditInput.UnreadConfig("x/b.cfg", Optional.empty(), "binary")),
                RuleCaseRun.AT),
            List.of(
                new Failing(),
                RuleCatalogue.named("config-missing").orElseThrow(),
                RuleCatalogue.named("config-unreadable").orElseThrow()));
    assertThat(outcome.ruleFailures())
        .containsExactly(
            "rule always-fails failed at north-sw2: IllegalStateException",
            "rule always-fails failed at x/b.cfg: IllegalStateException");
    assertThat(outcome.findings())
        .extracting(Finding::id)
        .containsExactly("config-unreadable///b.cfg", "config-missing/north-sw2//");
    assertThat(outcome.findings()).extracting(Finding::severity).containsOnly(Severity.UNVERIFIED);
  }

  private static final class Failing implements InputRule {
    @Override
    public RuleInfo info() {
      return new RuleInfo("always-fails", Group.INPUT, Severity.UNVERIFIED, "", "");
    }

    @Override
    public void check(InputCase input, Outcomes outcomes) {
      throw new IllegalStateException("enable secret hunter2");
    }
  }

  @Test
  void what_was_checked_on_each_switch_adds_up_to_what_each_rule_checked() throws IOException {
    for (String site : List.of("campus", "data-centre")) {
      AuditOutcome outcome = RuleCaseRun.run(Path.of("testdata/sites", site));
      Map<String, Integer> sums = new TreeMap<>();
      outcome
          .switchChecks()
          .forEach(one -> sums.merge(one.count().rule(), one.count().conforms(), Integer::sum));
      Map<String, Integer> all = new TreeMap<>();
      outcome.checks().stream()
          .filter(one -> one.conforms() > 0)
          .forEach(one -> all.put(one.rule(), one.conforms()));
      assertThat(sums).as(site).isEqualTo(all).hasSizeGreaterThan(30);
      assertThat(outcome.switchChecks())
          .extracting(one -> one.switchName() + " " + one.count().rule())
          .isSorted()
          .doesNotHaveDuplicates();
    }
  }

  @Test
  void a_difference_counts_where_its_switch_is() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            String.join("", HEAD.replace("vlan 231\n", ""), UPLINK, BUNDLE, MEMBERS, SHEET, END));
    assertThat(outcome.switchChecks())
        .contains(
            new SwitchCount("north-sw1", new RuleCount("vlan-not-created", 0, 1, 0)),
            new SwitchCount("north-sw1", new RuleCount("port-shut", 6, 0, 0)));
  }
}
