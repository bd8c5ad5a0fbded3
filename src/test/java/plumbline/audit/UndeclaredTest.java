package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.finding.Place;

/**
 * Whole audits of what the design does not know or keeps spare: ports, bundles, VLANs (section 6 of
 * the product contract; V-206666 for spare ports, the rest is common practice, no source).
 */
class UndeclaredTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        office: {id: 250}
        voice: {id: 231, name: VOICE}
        parked: {id: 999, unused: true}
      other-vlans: [500-510]
      roles:
        desk: {mode: access, access: office}
        link: {mode: trunk, native: parked, tagged: [office]}
      switches:
        sw1: {ports: {Gi1/0/1: desk, Gi1/0/2: spare}}
        sw2: {}
        sw3: {}
      links:
        - {ends: [sw1 Po1, sw2 Po1], role: link, members: [[Gi1/0/49, Gi1/0/49]]}
      multi-chassis: [{switches: [sw1, sw3], peer-link: Po9}]
      """;
  private static final String HEAD =
      """
      hostname sw1
      !
      vtp mode transparent
      !
      vlan 231
       name VOICE
      !
      vlan 250,500
      !
      """;
  private static final String DESK =
      """
      interface GigabitEthernet1/0/1
       switchport access vlan 250
       switchport mode access
      !
      """;
  private static final String SPARE =
      """
      interface GigabitEthernet1/0/2
       switchport access vlan 999
       switchport mode access
       shutdown
      !
      """;
  private static final String TRUNK =
      " switchport trunk native vlan 999\n switchport trunk allowed vlan 250\n"
          + " switchport mode trunk\n";
  private static final String LINK =
      "interface Port-channel1\n"
          + TRUNK
          + "!\ninterface GigabitEthernet1/0/49\n"
          + TRUNK
          + " channel-group 1 mode active\n!\n";
  private static final String END = "line vty 0 4\n login local\n!\nend\n";

  private static AuditOutcome audit(String design, String... parts) {
    AuditOutcome outcome = RuleCaseRun.run(design, String.join("", parts));
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> ids(AuditOutcome outcome) {
    return outcome.findings().stream().map(one -> one.severity() + " " + one.id()).toList();
  }

  private static AuditOutcome with(String more) {
    return audit(DESIGN, HEAD, DESK, SPARE, LINK, more, "!\n", END);
  }

  private static String port(int number, String lines) {
    return "interface GigabitEthernet1/0/" + number + "\n" + lines.indent(1) + "!\n";
  }

  @Test
  void a_switch_as_designed_gives_nothing() {
    assertThat(ids(with(""))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "switchport mode trunk | weakens trunk-undeclared",
        "switchport mode trunk;switchport trunk allowed vlan 500 | untidy trunk-undeclared",
        "switchport mode trunk;shutdown | ''",
        "switchport mode dynamic desirable | weakens trunk-undeclared",
        "switchport access vlan 250 | untidy port-undeclared",
        "switchport mode access;switchport access vlan 250 | untidy port-undeclared",
        "switchport mode access;switchport access vlan 250;shutdown | ''",
        "switchport mode access;switchport access vlan 999 | weakens native-vlan-in-use",
        "description a spare one | ''",
        "no switchport;ip address 192.0.2.1 255.255.255.0 | ''",
        "channel-group 1 mode active | ''",
        "switchport mode trunk;channel-group 1 mode active | ''",
      })
  void an_open_port_without_a_place_is_one_finding(String lines, String expected) {
    List<String> found = ids(with(port(5, lines.replace(";", "\n"))));
    if (expected.isEmpty()) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).containsExactly(expected + "/sw1/GigabitEthernet1/0/5/");
    }
  }

  @Test
  void an_undeclared_bundle_speaks_for_its_members() {
    String members =
        port(5, "switchport mode trunk\nchannel-group 5 mode active")
            + port(6, "switchport mode trunk\nchannel-group 5 mode active");
    String bundle = "interface Port-channel5\n switchport mode trunk\n!\n";
    assertThat(ids(with(bundle + members)))
        .containsExactly("weakens trunk-undeclared/sw1/Port-channel5/");
    AuditOutcome bare = with(members);
    assertThat(ids(bare)).containsExactly("weakens trunk-undeclared/sw1/GigabitEthernet1/0/5/");
    Finding first = bare.findings().get(0);
    assertThat(first.others()).containsExactly(Place.ofPort("sw1", "GigabitEthernet1/0/6"));
    assertThat(ids(with(bundle + members.replace(" channel", " shutdown\n channel")))).isEmpty();
    assertThat(ids(with(bundle.replace("trunk\n", "trunk\n shutdown\n") + members))).isEmpty();
  }

  @Test
  void a_peer_link_has_its_place() {
    String peer =
        "interface Port-channel9\n switchport mode trunk\n!\n"
            + port(9, "switchport mode trunk\nchannel-group 9 mode active");
    assertThat(ids(with(peer))).isEmpty();
  }

  @Test
  void a_bundle_with_a_designed_member_is_that_members_business() {
    String bundle = "interface Port-channel7\n switchport mode trunk\n!\n";
    String joined = DESK.replace("!\n", " channel-group 7 mode active\n!\n");
    assertThat(ids(audit(DESIGN, HEAD, joined, SPARE, LINK, bundle, END)))
        .noneMatch(id -> id.contains("undeclared"));
  }

  @Test
  void in_a_script_an_undeclared_port_is_left_open() {
    AuditOutcome outcome =
        audit(
            DESIGN,
            "configure terminal\nhostname sw1\ninterface gi1/0/5\nswitchport access vlan 250\nexit\n");
    assertThat(ids(outcome))
        .contains("unverified trunk-undeclared/sw1//", "unverified port-undeclared/sw1//")
        .noneMatch(id -> id.startsWith("weakens") || id.startsWith("untidy"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "switchport access vlan 250;switchport mode access | weakens",
        "switchport access vlan 999;switchport mode access | weakens",
        "switchport mode trunk | weakens",
        "switchport access vlan 250;switchport mode access;shutdown | untidy",
        "shutdown | untidy",
        "switchport mode trunk;shutdown | untidy",
        "switchport access vlan 999;shutdown | ''",
        "no switchport;shutdown | ''",
      })
  void a_spare_port_is_shut_in_an_unused_vlan(String lines, String severity) {
    String spare = port(2, lines.replace(";", "\n"));
    List<String> found = ids(audit(DESIGN, HEAD, DESK, spare, LINK, END));
    if (severity.isEmpty()) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found)
          .containsExactly(severity + " spare-port-open/sw1/GigabitEthernet1/0/2/spare");
    }
  }

  @Test
  void without_an_unused_vlan_a_spare_port_need_only_be_shut() {
    // the native VLAN of the link is one like others then, and has to be in its list
    String design = DESIGN.replace(", unused: true", "");
    assertThat(
            ids(
                audit(
                    design,
                    HEAD.replace("250,500", "250,500,999"),
                    DESK,
                    port(2, "shutdown"),
                    LINK,
                    END)))
        .containsExactly("weakens native-vlan-differs/sw1/Port-channel1/link to sw2 Port-channel1");
  }

  @Test
  void a_spare_port_that_the_switch_does_not_have_is_not_open() {
    assertThat(ids(audit(DESIGN, HEAD, DESK, LINK, END))).isEmpty();
    AuditOutcome cut = audit(DESIGN, HEAD, DESK, LINK, "interface Gig");
    assertThat(ids(cut)).containsExactly("unverified config-truncated/sw1//");
  }

  @Test
  void a_data_centre_port_without_a_mode_line_is_an_access_port() {
    String text =
        "!Command: show running-config\n!Time: Tue Nov 24 22:14:07 2026\n\nversion 9.3(8)\n"
            + "hostname sw1\n\nvlan 1,250\n\ninterface Ethernet1/5\n  switchport access vlan 250\n"
            + "  no shutdown\n\ninterface Ethernet1/6\n  switchport mode trunk\n  no shutdown\n\n"
            + "line vty\n";
    String design = "format: plumbline-design/1\nvlans: {office: {id: 250}}\nswitches: {sw1: {}}\n";
    assertThat(ids(audit(design, text)))
        .containsExactly(
            "untidy port-undeclared/sw1/Ethernet1/5/", "weakens trunk-undeclared/sw1/Ethernet1/6/");
  }

  @ParameterizedTest
  @CsvSource({
    "vlan 300, 300",
    "vlan 300-310, 300-310",
    "vlan 505, ",
    "vlan 1002, ",
    "vlan 1, ",
    "vlan 300;no vlan 300, ",
    "interface Vlan300; ip address 192.0.2.1 255.255.255.0, ",
    "vlan 301;interface Vlan301; ip address 192.0.2.1 255.255.255.0, 301",
  })
  void a_vlan_that_the_design_does_not_know_is_listed(String lines, String vlans) {
    AuditOutcome outcome = with(lines.replace(";", "\n") + "\n");
    if (vlans == null) {
      assertThat(ids(outcome)).isEmpty();
    } else {
      assertThat(ids(outcome)).containsExactly("untidy vlan-undeclared/sw1//");
      assertThat(outcome.findings().get(0).vlans()).hasToString(vlans);
    }
  }

  @Test
  void a_list_outside_the_text_does_not_conform() {
    AuditOutcome outcome =
        audit(
            "format: plumbline-design/1\nswitches: {sw1: {}}\n",
            "hostname sw1\n!\nvtp mode client\n!\nline vty 0 4\n!\nend\n");
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("vlan-undeclared"))
        .allMatch(count -> count.conforms() == 0 && count.undecided() == 0);
  }

  @ParameterizedTest
  @CsvSource({
    "VOICE, VOICE, ",
    "VOICE, voice, untidy",
    "VOICE, OFFICE, untidy",
    "VLAN0231, '', ",
    "VOICE, '', untidy",
  })
  void a_name_is_compared_as_written(String wanted, String found, String severity) {
    String design = DESIGN.replace("name: VOICE", "name: " + wanted);
    String head = HEAD.replace(" name VOICE\n", found.isEmpty() ? "" : " name " + found + "\n");
    List<String> said = ids(audit(design, head, DESK, SPARE, LINK, END));
    if (severity == null) {
      assertThat(said).isEmpty();
    } else {
      assertThat(said).containsExactly(severity + " vlan-name-differs/sw1//voice");
    }
  }

  @Test
  void names_that_may_be_secrets_are_neither_shown_nor_equal() {
    String design = DESIGN.replace("name: VOICE", "name: password-One1");
    AuditOutcome outcome =
        audit(design, HEAD.replace("VOICE", "password-Two2"), DESK, SPARE, LINK, END);
    assertThat(ids(outcome)).containsExactly("unverified vlan-name-differs/sw1//voice");
    assertThat(RuleCaseRun.print(outcome.findings())).doesNotContain("One1").doesNotContain("Two2");
  }

  @Test
  void a_suspended_vlan_that_nobody_needs_is_none_of_our_business() {
    String head = HEAD.replace(" name VOICE\n", " name VOICE\n state suspend\n");
    assertThat(ids(audit(DESIGN, head, DESK, SPARE, LINK, END))).isEmpty();
    String needed = HEAD.replace("vlan 250,500\n", "vlan 250,500\n shutdown\n");
    AuditOutcome outcome = audit(DESIGN, needed, DESK, SPARE, LINK, END);
    assertThat(ids(outcome)).containsExactly("breaks vlan-inactive/sw1//");
    assertThat(outcome.findings().get(0).vlans()).hasToString("250");
  }
}
