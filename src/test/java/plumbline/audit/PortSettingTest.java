package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.result.Result.RuleCount;

/**
 * Whole audits of what roles ask beside mode and VLANs (sections 4 and 6 of the product contract;
 * which lines count on a bundle is common practice, no source).
 */
class PortSettingTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}, voice: {id: 231}, parked: {id: 999, unused: true}}
      roles:
        one: {ROLE}
      switches:
        sw1: {PLACE}
      """;
  private static final String OWN =
      "hostname sw1\n!\nvtp mode transparent\n!\nmls qos\n!\nvlan 231,250,999\n!\n";
  private static final String LEAF =
      "! device: sw1\nhostname sw1\n!\nvlan 231,250,999\n!\nspanning-tree mode mstp\n!\n";
  private static final String ACCESS = " switchport mode access\n switchport access vlan 250\n";
  private static final String TRUNK =
      " switchport trunk native vlan 999\n switchport trunk allowed vlan 250\n"
          + " switchport mode trunk\n switchport nonegotiate\n";
  private static final String SHEET = "ports: {Gi1/0/1: one}";
  private static final String END = "!\nend\n";

  private static AuditOutcome sheet(String role, String lines) {
    return run(role, SHEET, "", OWN + "interface Gi1/0/1\n" + lines + END);
  }

  private static AuditOutcome run(String role, String place, String rest, String config) {
    String design = DESIGN.replace("ROLE", role).replace("PLACE", place) + rest;
    AuditOutcome outcome = RuleCaseRun.run(design, config);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static AuditOutcome bundle(String role, String members, String config) {
    return run(
        "bundle: lacp, " + role,
        "",
        "links:\n  - {ends: [sw1 Po1, outside], role: one" + members + "}\n",
        OWN + config + END);
  }

  private static String member(int number, String lines) {
    return "interface GigabitEthernet1/0/" + number + "\n" + lines + "!\n";
  }

  private static List<String> found(AuditOutcome outcome) {
    return outcome.findings().stream()
        .map(one -> one.severity() + " " + one.rule() + ": " + one.found())
        .toList();
  }

  private static RuleCount count(AuditOutcome outcome, String rule) {
    return outcome.checks().stream().filter(one -> one.rule().equals(rule)).findFirst().get();
  }

  @Test
  void one_vlan_that_exists_nowhere_is_told_in_the_singular() {
    String role = "mode: trunk, native: parked, tagged: [office]";
    assertThat(sheet(role, TRUNK.replace("vlan 250", "vlan 250,700")).findings())
        .singleElement()
        .extracting(Finding::found)
        .isEqualTo("allowed as well: VLAN 700 that does not exist here");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "switchport voice vlan 231|",
        "switchport voice vlan none|breaks voice-vlan-differs: no voice VLAN",
        "no switchport voice vlan|breaks voice-vlan-differs: no voice VLAN",
        "switchport voice vlan 250|breaks voice-vlan-differs: voice VLAN office (250)",
        "switchport voice vlan untagged|breaks voice-vlan-differs: voice untagged",
      })
  void every_kind_of_voice_line_is_told(String line, String expected) {
    AuditOutcome outcome =
        sheet("mode: access, access: office, voice: voice", ACCESS + " " + line + "\n");
    assertThat(found(outcome)).isEqualTo(expected == null ? List.of() : List.of(expected));
  }

  @Test
  void a_voice_line_on_a_trunk_leaves_the_word_to_the_mode() {
    AuditOutcome outcome =
        sheet(
            "mode: access, access: office, voice: voice",
            " switchport mode trunk\n switchport voice vlan 231\n");
    assertThat(found(outcome)).containsExactly("breaks mode-differs: mode trunk");
    assertThat(count(outcome, "voice-vlan-differs").conforms()).isZero();
  }

  @Test
  void a_voice_vlan_of_a_role_that_names_none_is_not_asked() {
    AuditOutcome outcome =
        sheet("mode: access, access: office", ACCESS + " switchport voice vlan 231\n");
    assertThat(found(outcome)).isEmpty();
    assertThat(count(outcome, "voice-vlan-differs").conforms()).isZero();
  }

  @Test
  void a_script_that_says_nothing_of_a_setting_leaves_it_open() {
    AuditOutcome outcome =
        run(
            "mode: access, access: office, voice: voice, bundle: none, mtu: 1500, qos: none,"
                + " speed: auto, description: \"*\", udld: false",
            "ports: {Gi1/0/1: one}",
            "",
            "conf t\nhostname sw1\ninterface Gi1/0/1\nswitchport mode access\n"
                + "switchport access vlan 250\n");
    for (String rule :
        List.of(
            "voice-vlan-differs",
            "bundle-differs",
            "mtu-differs",
            "qos-differs",
            "speed-duplex-differs",
            "description-differs",
            "port-setting-differs")) {
      RuleCount count = count(outcome, rule);
      assertThat(List.of(count.conforms(), count.differs(), count.undecided()))
          .as(rule)
          .containsExactly(0, 0, 1);
    }
  }

  @Test
  void what_the_families_of_a_dialect_default_differently_is_open() {
    AuditOutcome outcome =
        run(
            "mtu: 9214, qos: trust-dscp",
            "dialect: leaf-spine, ports: {Et1: one}",
            "",
            LEAF + "interface Ethernet1\n   switchport mode access\n!\nend\n");
    assertThat(count(outcome, "qos-differs").differs()).isZero();
    assertThat(count(outcome, "qos-differs").conforms()).isZero();
    assertThat(count(outcome, "mtu-differs").differs()).isZero();
  }

  @Test
  void a_routed_port_is_asked_what_it_has_a_use_for() {
    AuditOutcome outcome =
        sheet(
            "mode: routed, mtu: 9000, bundle: none, root-guard: true",
            " no switchport\n mtu 1500\n ip address 192.0.2.1 255.255.255.0\n");
    assertThat(found(outcome)).containsExactly("weakens mtu-differs: MTU 1500");
    assertThat(outcome.findings().get(0).consequence())
        .isEqualTo(
            "Packets of more than 1500 bytes towards the one device are fragmented or dropped.");
    assertThat(count(outcome, "port-setting-differs").differs()).isZero();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "none|active|bundle 1, LACP active",
        "none|on|bundle 1, static",
        "none|desirable|bundle 1, proprietary negotiation desirable",
        "lacp|on|bundle 1, static",
        "lacp|auto|bundle 1, proprietary negotiation auto",
        "lacp|passive|",
        "lacp|active|",
        "static|active|bundle 1, LACP active",
        "static|on|",
      })
  void the_mode_of_a_bundle_is_held_against_the_role(String wish, String mode, String expected) {
    AuditOutcome outcome = sheet("bundle: " + wish, " channel-group 1 mode " + mode + "\n");
    assertThat(outcome.findings().stream().filter(one -> one.rule().equals("bundle-differs")))
        .extracting(Finding::found)
        .isEqualTo(expected == null ? List.of() : List.of(expected));
  }

  @Test
  void a_static_bundle_of_one_port_passes_frames_for_now() {
    assertThat(sheet("bundle: none", " channel-group 7 mode on\n").findings())
        .filteredOn(one -> one.rule().equals("bundle-differs"))
        .extracting(Finding::consequence)
        .containsExactly(
            "The port is the only one in bundle 7 and passes frames for now; a second one would get"
                + " a share of them, which the one device does not expect there.");
  }

  @Test
  void members_that_a_design_does_not_list_are_judged_at_their_bundle() {
    String role = "mode: trunk, native: parked, tagged: [office]";
    String stanza = "interface Port-channel1\n" + TRUNK + "!\n";
    String active = member(49, TRUNK + " channel-group 1 mode active\n");
    String fixed = member(50, TRUNK + " channel-group 1 mode on\n");
    assertThat(found(bundle(role, "", stanza + active))).isEmpty();
    assertThat(found(bundle(role, "", stanza + active + fixed)))
        .containsExactly("weakens bundle-differs: GigabitEthernet1/0/50: bundle 1, static");
    assertThat(found(bundle(role, "", stanza)))
        .containsExactly("breaks bundle-differs: no port joins the bundle");
    assertThat(found(bundle(role, "", active + fixed)))
        .containsExactly("weakens bundle-differs: bundle 1, static");
  }

  @Test
  void a_listed_member_is_asked_at_its_own_place_alone() {
    String role = "mode: trunk, native: parked, tagged: [office]";
    String stanza = "interface Port-channel1\n" + TRUNK + "!\n";
    String members = ", members: [Gi1/0/49, Gi1/0/50]";
    AuditOutcome outcome =
        bundle(
            role,
            members,
            stanza + member(49, TRUNK + " channel-group 2 mode active\n") + member(50, TRUNK));
    assertThat(found(outcome))
        .containsExactly(
            "weakens bundle-differs: bundle 2, LACP active", "weakens bundle-differs: no bundle");
  }

  @Test
  void a_link_without_a_wish_asks_its_members_for_their_bundle_only() {
    String links = "links:\n  - {ends: [sw1 Po1, outside], role: one, members: [Gi1/0/49]}\n";
    String stanza = "interface Port-channel1\n" + TRUNK + "!\n";
    String role = "mode: trunk, native: parked, tagged: [office]";
    for (String mode : List.of("on", "active", "desirable")) {
      String config = OWN + stanza + member(49, TRUNK + " channel-group 1 mode " + mode + "\n");
      assertThat(found(run(role, "", links, config + END))).as(mode).isEmpty();
    }
    assertThat(found(run(role, "", links, OWN + stanza + member(49, TRUNK) + END)))
        .containsExactly("weakens bundle-differs: no bundle");
  }

  @Test
  void a_bundle_takes_from_its_members_what_it_has_no_line_for() {
    String role = "mode: trunk, native: parked, tagged: [office], qos: trust-dscp, mtu: 9000";
    String stanza = "interface Port-channel1\n" + TRUNK + "%s!\n";
    String right = TRUNK + " mls qos trust dscp\n mtu 9000\n channel-group 1 mode active\n";
    String wrong = TRUNK + " mls qos trust cos\n mtu 1500\n channel-group 1 mode active\n";
    assertThat(found(bundle(role, "", stanza.formatted("") + member(49, right)))).isEmpty();
    assertThat(
            found(bundle(role, "", stanza.formatted("") + member(49, right) + member(50, wrong))))
        .containsExactlyInAnyOrder(
            "weakens mtu-differs: MTU 1500", "weakens qos-differs: trust in the CoS of the tag");
    assertThat(
            found(
                bundle(
                    role,
                    "",
                    stanza.formatted(" mls qos trust dscp\n mtu 9000\n") + member(49, wrong))))
        .isEmpty();
  }

  @Test
  void a_trust_line_without_effect_is_no_trust() {
    String trust = "mode: access, access: office, qos: trust-cos";
    String config = OWN.replace("mls qos", "no mls qos");
    String port = "interface GigabitEthernet1/0/1\n" + ACCESS + " mls qos trust cos\n";
    assertThat(found(run(trust, SHEET, "", OWN + port + END))).isEmpty();
    assertThat(found(run(trust, SHEET, "", config + port + END)))
        .containsExactly(
            "weakens qos-differs: a trust line without effect: QoS is off on the switch");
    assertThat(
            found(run("mode: access, access: office, qos: none", SHEET, "", config + port + END)))
        .isEmpty();
  }

  @Test
  void a_difference_that_only_a_trunk_has_a_use_for_waits_for_the_mode() {
    String role = "mode: trunk, native: parked, tagged: [office], native-tagging: true";
    assertThat(found(sheet(role, ACCESS))).containsExactly("breaks mode-differs: mode access");
    assertThat(found(sheet(role + ", storm-control: true", ACCESS)))
        .containsExactly(
            "breaks mode-differs: mode access", "weakens port-setting-differs: storm control off");
  }

  @Test
  void a_guard_that_a_filter_disarms_is_without_effect() {
    assertThat(
            found(
                sheet(
                    "mode: access, access: office, root-guard: true",
                    ACCESS + " spanning-tree guard root\n spanning-tree bpdufilter enable\n")))
        .contains("weakens port-setting-differs: root guard without effect");
  }

  @Test
  void a_secret_in_a_description_is_not_held_against_the_pattern() {
    String role = "mode: access, access: office, description: \"key card *\"";
    AuditOutcome masked = sheet(role, ACCESS + " description key card reader\n");
    assertThat(found(masked))
        .containsExactly(
            "unverified description-differs: cannot be told: a part of the description may be"
                + " secret and was not compared");
    AuditOutcome secret =
        sheet(
            "mode: access, access: office, description: \"desk\"",
            ACCESS + " description password Tr0ub4dor\n");
    assertThat(secret.findings().toString()).doesNotContain("Tr0ub4dor");
  }

  @ParameterizedTest
  @CsvSource({
    "*,desk 12,true",
    "desk ?2,desk 12,true",
    "Desk *,desk 12,false",
    "desk,desk 12,false"
  })
  void a_description_fits_as_a_whole_and_in_its_case(String pattern, String text, boolean fits) {
    AuditOutcome outcome =
        sheet(
            "mode: access, access: office, description: \"" + pattern + "\"",
            ACCESS + " description " + text + "\n");
    assertThat(found(outcome))
        .isEqualTo(fits ? List.of() : List.of("untidy description-differs: description " + text));
  }

  @Test
  void negotiation_that_the_role_wants_and_the_port_has_off_is_told() {
    String role = "mode: trunk, native: parked, tagged: [office], negotiate: true";
    assertThat(found(sheet(role, TRUNK)))
        .containsExactly("weakens port-setting-differs: trunk negotiation off");
    assertThat(found(sheet(role, TRUNK.replace(" switchport nonegotiate\n", "")))).isEmpty();
  }

  @Test
  void only_what_differs_is_named_beside_what_cannot_be_told() {
    AuditOutcome outcome =
        run(
            "speed: 1000, duplex: full",
            "ports: {Gi1/0/1: one}",
            "",
            "conf t\nhostname sw1\ninterface Gi1/0/1\nspeed 100\n");
    assertThat(found(outcome))
        .contains("weakens speed-duplex-differs: speed 100; duplex full: cannot be told");
  }
}
