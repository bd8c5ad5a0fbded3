package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.setting.Evidence;

/**
 * Whole audits of gateways: which cause is given where a gateway does not work (sections 4 and 6 of
 * the product contract; what a VLAN interface needs to come up is common practice, no source).
 */
class GatewayCauseTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans:
        office: {id: 250, gateway: required}
        lab: {id: 260, gateway: required, filter: true}
        stage: {id: 240, gateway: forbidden}
        guest: {id: 270}
        parked: {id: 999, gateway: forbidden, unused: true}
      other-vlans: [500]
      roles:
        desk: {mode: access, access: office}
        bench: {mode: access, access: lab}
      switches:
        sw1: {ports: {Gi1/0/1: desk, Gi1/0/2: bench}}
        sw2: {}
      gateways:
        sw1: [office, lab]
        sw2: [office]
      """;
  private static final String VLANS = "vlan 240,250,260,270,500,999\n!\n";
  private static final String ROUTING = "ip routing\n!\n";
  private static final String DESK =
      "interface GigabitEthernet1/0/1\n switchport access vlan 250\n switchport mode access\n";
  private static final String BENCH =
      "interface GigabitEthernet1/0/2\n switchport access vlan 260\n switchport mode access\n";
  private static final String OFFICE = "interface Vlan250\n ip address 192.0.2.1 255.255.255.128\n";
  private static final String LAB =
      "interface Vlan260\n ip address 192.0.2.129 255.255.255.128\n ip access-group LAB in\n";
  private static final String END = "!\nline vty 0 4\n login local\n!\nend\n";

  private static AuditOutcome audit(String design, String... parts) {
    String text = "hostname sw1\n!\nvtp mode transparent\n!\n" + String.join("", parts) + END;
    AuditOutcome outcome = RuleCaseRun.run(design, text);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> ids(AuditOutcome outcome) {
    return outcome.findings().stream().map(one -> one.severity() + " " + one.id()).toList();
  }

  private static List<String> ids(String... parts) {
    return ids(audit(DESIGN, parts));
  }

  private static Finding only(AuditOutcome outcome, String id) {
    assertThat(ids(outcome)).containsExactly(id);
    return outcome.findings().get(0);
  }

  @Test
  void gateways_as_designed_give_nothing() {
    assertThat(ids(VLANS, ROUTING, DESK, BENCH, OFFICE, LAB)).isEmpty();
  }

  @Test
  void a_gateway_that_fails_for_want_of_its_vlan_is_a_consequence_of_that() {
    Finding absent =
        only(
            audit(DESIGN, VLANS, "no vlan 250\n", ROUTING, DESK, BENCH, OFFICE, LAB),
            "breaks vlan-not-created/sw1//");
    assertThat(absent.consequence())
        .isEqualTo(
            "Nothing in office (250) passes through this switch, whatever its ports allow;"
                + " affected: the desk device and its gateway. Until then the gateway for office"
                + " (250) does not work. Now the desk at sw1 GigabitEthernet1/0/1 is cut off from"
                + " office (250).");
    String suspended = VLANS + "vlan 250\n state suspend\n!\n";
    assertThat(
            only(
                    audit(DESIGN, suspended, ROUTING, DESK, BENCH, OFFICE, LAB),
                    "breaks vlan-inactive/sw1//")
                .consequence())
        .endsWith(
            "Until then the gateway for office (250) does not work. Now the desk at sw1"
                + " GigabitEthernet1/0/1 is cut off from office (250).");
  }

  @Test
  void a_filter_on_the_vlan_itself_leaves_open_whether_the_gateway_is_filtered() {
    String bare = LAB.replace(" ip access-group LAB in\n", "");
    assertThat(ids(VLANS, ROUTING, DESK, BENCH, OFFICE, bare))
        .containsExactly("weakens gateway-filter-missing/sw1/Vlan260/lab");
    String filter = "vlan filter LAB vlan-list 255-260\n!\n";
    Finding open =
        only(
            audit(DESIGN, VLANS, filter, ROUTING, DESK, BENCH, OFFICE, bare),
            "unverified gateway-filter-missing/sw1/Vlan260/lab");
    assertThat(open.found())
        .isEqualTo(
            "cannot be told: a filter stands on the VLAN itself, and what it filters is not read");
    assertThat(evidence(open)).containsExactly("7 vlan filter LAB vlan-list 255-260");
  }

  private static final String UPLINK =
      "interface GigabitEthernet1/0/9\n no switchport\n no ip address\n";
  private static final String TAGGED =
      "!\ninterface GigabitEthernet1/0/9.250\n encapsulation dot1Q 250\n"
          + " ip address 192.0.2.1 255.255.255.128\n";
  private static final String WITH_UPLINK =
      DESIGN
          .replace("Gi1/0/1: desk, ", "Gi1/0/9: router, ")
          .replace("roles:", "roles:\n  router: {mode: routed}");

  @Test
  void a_gateway_whose_port_below_is_shut_is_a_consequence_of_that() {
    assertThat(ids(audit(WITH_UPLINK, VLANS, ROUTING, BENCH, UPLINK, TAGGED, LAB))).isEmpty();
    String shut = UPLINK + " shutdown\n";
    assertThat(
            only(
                    audit(WITH_UPLINK, VLANS, ROUTING, BENCH, shut, TAGGED, LAB),
                    "breaks port-shut/sw1/GigabitEthernet1/0/9/router")
                .consequence())
        .isEqualTo(
            "The router device has no connection through this port. Until then the gateway for"
                + " office (250) does not work.");
    Finding own =
        audit(WITH_UPLINK, VLANS, ROUTING, BENCH, shut, TAGGED + " shutdown\n", LAB)
            .findings()
            .get(1);
    assertThat(own.id()).isEqualTo("gateway-not-working/sw1/GigabitEthernet1/0/9.250/office");
    assertThat(own.found()).isEqualTo("GigabitEthernet1/0/9.250 is shut");
  }

  @Test
  void a_port_below_that_is_shut_and_in_no_design_place_is_told_with_the_gateway() {
    String design = WITH_UPLINK.replace("Gi1/0/9: router, ", "");
    Finding found =
        only(
            audit(design, VLANS, ROUTING, BENCH, UPLINK + " shutdown\n", TAGGED, LAB),
            "weakens gateway-not-working/sw1/GigabitEthernet1/0/9.250/office");
    assertThat(found.found()).isEqualTo("GigabitEthernet1/0/9 is shut");
    assertThat(evidence(found))
        .containsExactly("15 shutdown", "17 interface GigabitEthernet1/0/9.250");
  }

  @Test
  void a_cause_of_its_own_stands_beside_the_absent_vlan() {
    assertThat(ids(VLANS, "no vlan 250\n", ROUTING, DESK, BENCH, OFFICE + " shutdown\n", LAB))
        .containsExactly(
            "breaks vlan-not-created/sw1//", "breaks gateway-not-working/sw1/Vlan250/office");
  }

  @Test
  void a_gateway_that_fails_for_want_of_a_designed_port_is_a_consequence_of_that() {
    assertThat(
            only(
                    audit(DESIGN, VLANS, ROUTING, DESK + " shutdown\n", BENCH, OFFICE, LAB),
                    "breaks port-shut/sw1/GigabitEthernet1/0/1/desk")
                .consequence())
        .isEqualTo(
            "The desk device has no connection through this port. Until then the gateway for"
                + " office (250) does not work. Now the desk here is cut off from office (250).");
    assertThat(
            only(
                    audit(DESIGN, VLANS, ROUTING, BENCH, OFFICE, LAB),
                    "breaks port-absent/sw1/GigabitEthernet1/0/1/desk")
                .consequence())
        .endsWith(
            "Until then the gateway for office (250) does not work. Now the desk here is cut off"
                + " from office (250).");
    assertThat(ids(VLANS, ROUTING, DESK.replace("vlan 250", "vlan 500"), BENCH, OFFICE, LAB))
        .containsExactly("breaks access-vlan-differs/sw1/GigabitEthernet1/0/1/desk");
  }

  @Test
  void without_autostate_no_port_is_needed() {
    Finding shut =
        only(
            audit(
                DESIGN,
                VLANS,
                ROUTING,
                DESK + " shutdown\n",
                BENCH,
                OFFICE + " no autostate\n",
                LAB),
            "breaks port-shut/sw1/GigabitEthernet1/0/1/desk");
    assertThat(shut.consequence()).doesNotContain("gateway");
  }

  @Test
  void where_no_designed_port_carries_the_vlan_the_gateway_speaks() {
    String design = DESIGN.replace("Gi1/0/1: desk, ", "");
    Finding found =
        only(
            audit(design, VLANS, ROUTING, BENCH, OFFICE, LAB),
            "weakens gateway-not-working/sw1/Vlan250/office");
    assertThat(found.found()).isEqualTo("no open port carries office (250)");
    assertThat(found.consequence())
        .isEqualTo("Hosts in office (250) cannot leave their VLAN through this switch.");
    assertThat(evidence(found))
        .containsExactly("12 interface Vlan250", "north-sw1.cfg no open port carries VLAN 250");
  }

  @Test
  void a_silent_rule_does_not_keep_the_gateway_from_being_heard() {
    String design = DESIGN + "rules: {silent: [vlan-not-created]}\n";
    assertThat(ids(audit(design, VLANS, "no vlan 250\n", ROUTING, DESK, BENCH, OFFICE, LAB)))
        .containsExactly("weakens gateway-not-working/sw1/Vlan250/office");
  }

  @Test
  void a_switch_that_does_not_route_is_one_finding_for_all_its_gateways() {
    Finding found =
        only(
            audit(DESIGN, VLANS, "no ip routing\n!\n", DESK, BENCH, OFFICE, LAB),
            "breaks gateway-not-working/sw1//");
    assertThat(found.vlans()).hasToString("250,260");
  }

  @Test
  void an_unknown_vlan_list_is_no_word_about_gateways() {
    String text = "hostname sw1\n!\nvtp mode server\n!\n";
    AuditOutcome outcome =
        RuleCaseRun.run(DESIGN, text + String.join("", ROUTING, DESK, BENCH, OFFICE, LAB, END));
    assertThat(ids(outcome)).containsExactly("unverified vlan-database-unknown/sw1//");
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("gateway-not-working"))
        .allMatch(count -> count.conforms() == 0 && count.undecided() == 2);
  }

  @Test
  void in_a_script_nothing_is_told_and_nothing_conforms() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            "configure terminal\nhostname sw1\ninterface vlan 250\nip address 192.0.2.1 255.255.255.128\nexit\n");
    assertThat(ids(outcome))
        .contains("unverified gateway-not-working/sw1//")
        .noneMatch(id -> id.startsWith("breaks gateway"));
  }

  @Test
  void in_a_cut_text_an_absent_interface_is_left_to_the_cut() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN,
            "hostname sw1\n!\nvtp mode transparent\n!\n"
                + String.join("", VLANS, ROUTING, DESK, "!\n", BENCH, "!\n")
                + "interface Gig");
    assertThat(ids(outcome)).containsExactly("unverified config-truncated/sw1//");
  }

  @ParameterizedTest
  @CsvSource({
    "ip address 192.0.2.1 255.255.255.128, ",
    "ip address 192.0.2.2 255.255.255.128; standby 1 ip 192.0.2.1, ",
    "ip address 192.0.2.2 255.255.255.128; vrrp 1 ip 192.0.2.1, ",
    "ip address 192.0.2.2 255.255.255.128; ip address 192.0.2.1 255.255.255.128 secondary, ",
    "ip address 192.0.2.2 255.255.255.128, address 192.0.2.2 255.255.255.128",
    "ip address 192.0.2.11 255.255.255.128, address 192.0.2.11 255.255.255.128",
    "ip address 192.0.2.2 255.255.255.128; standby 1 ip 192.0.2.3, virtual address 192.0.2.3",
    "no ip address, Vlan250 has no address",
  })
  void the_designed_address_may_be_its_own_or_a_virtual_one(String lines, String found) {
    String design =
        DESIGN.replace("sw1: [office, lab]", "sw1: {office: {address: 192.0.2.1}, lab: {}}");
    String office = "interface Vlan250\n " + lines.replace("; ", "\n ") + "\n";
    AuditOutcome outcome = audit(design, VLANS, ROUTING, DESK, BENCH, office, LAB);
    if (found == null) {
      assertThat(ids(outcome)).isEmpty();
    } else {
      assertThat(only(outcome, "weakens gateway-not-working/sw1/Vlan250/office").found())
          .isEqualTo(found);
    }
  }

  @Test
  void a_wrong_address_is_proven_by_its_line_and_no_other() {
    String design =
        DESIGN.replace("sw1: [office, lab]", "sw1: {office: {address: 192.0.2.1}, lab: {}}");
    String office =
        "interface Vlan250\n ip address 192.0.2.2 255.255.255.128\n standby 1 ip 192.0.2.3\n";
    AuditOutcome outcome = audit(design, VLANS, ROUTING, DESK + " shutdown\n", BENCH, office, LAB);
    assertThat(ids(outcome))
        .containsExactly(
            "breaks port-shut/sw1/GigabitEthernet1/0/1/desk",
            "breaks gateway-not-working/sw1/Vlan250/office");
    Finding found = outcome.findings().get(1);
    assertThat(found.found()).isEqualTo("virtual address 192.0.2.3");
    assertThat(evidence(found))
        .containsExactly("16 interface Vlan250", "18 standby 1 ip 192.0.2.3");
  }

  @Test
  void gateways_that_fail_for_one_cause_are_listed_in_one_sentence() {
    String design =
        DESIGN
            .replace(
                "desk: {mode: access, access: office}",
                "desk: {mode: trunk, tagged: [lab, office]}")
            .replace(", Gi1/0/2: bench", "")
            .replace("sw1: [office, lab]", "sw1: {lab: {address: 192.0.2.129}, office: {}}");
    String trunk =
        "interface GigabitEthernet1/0/1\n switchport trunk allowed vlan 250,260\n"
            + " switchport mode trunk\n shutdown\n";
    assertThat(
            only(
                    audit(design, VLANS, ROUTING, trunk, OFFICE, LAB),
                    "breaks port-shut/sw1/GigabitEthernet1/0/1/desk")
                .consequence())
        .endsWith(
            " Until then these do not work: the gateway for office (250); the gateway for lab"
                + " (260) with address 192.0.2.129. Now the desk here is cut off from office (250)"
                + " and lab (260).");
  }

  private static List<String> evidence(Finding finding) {
    return finding.evidence().stream()
        .map(
            proof ->
                proof.evidence() instanceof Evidence.Line line
                    ? line.line() + " " + line.text()
                    : proof.file().orElse("default")
                        + " "
                        + ((Evidence.Default) proof.evidence()).name())
        .toList();
  }

  @Test
  void a_sub_interface_with_the_tag_is_a_gateway_too() {
    String design =
        DESIGN.replace("Gi1/0/1: desk, ", "").replace("gateway: required}", "gateway: required}");
    String tagged =
        "interface GigabitEthernet1/0/9\n no switchport\n!\ninterface GigabitEthernet1/0/9.250\n"
            + " encapsulation dot1Q 250\n ip address 192.0.2.1 255.255.255.128\n";
    assertThat(ids(audit(design, VLANS, ROUTING, BENCH, tagged, LAB))).isEmpty();
    String shut = tagged.replace(" no switchport\n", " no switchport\n shutdown\n");
    assertThat(
            only(
                    audit(design, VLANS, ROUTING, BENCH, shut, LAB),
                    "weakens gateway-not-working/sw1/GigabitEthernet1/0/9.250/office")
                .found())
        .isEqualTo("GigabitEthernet1/0/9 is shut");
  }

  @ParameterizedTest
  @CsvSource({
    "'', 240, '', breaks gateway-forbidden/sw1/Vlan240/stage",
    "'', 240, ' shutdown', untidy gateway-forbidden/sw1/Vlan240/stage",
    "'', 999, '', weakens gateway-forbidden/sw1/Vlan999/parked",
    "'', 270, '', weakens gateway-undeclared/sw1/Vlan270/guest",
    "'', 270, ' shutdown', ",
    "'', 500, '', ",
    "'', 300, '', ",
    "management: {vlan: stage}, 240, '', ",
    "management: {vlan: guest}, 270, '', ",
  })
  void an_address_elsewhere_is_a_gateway_unless_it_is_for_management(
      String key, int vlan, String line, String id) {
    String keys = key.isEmpty() ? "" : key + ", ";
    String design =
        DESIGN
            .replace("sw1: {ports: {", "sw1: {" + keys + "ports: {Gi1/0/3: stage, ")
            .replace("roles:\n", "roles:\n  stage: {mode: access, access: stage}\n");
    String stage =
        "interface GigabitEthernet1/0/3\n switchport access vlan 240\n switchport mode access\n";
    String other =
        "interface Vlan" + vlan + "\n ip address 198.51.100.1 255.255.255.0\n" + line + "\n";
    List<String> found = ids(audit(design, VLANS, ROUTING, DESK, BENCH, stage, OFFICE, LAB, other));
    if (id == null) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).containsExactly(id);
    }
  }

  @Test
  void a_forbidden_gateway_weakens_while_no_port_carries_its_vlan() {
    String stage = "interface Vlan240\n ip address 198.51.100.1 255.255.255.0\n";
    assertThat(
            only(
                    audit(DESIGN, VLANS, ROUTING, DESK, BENCH, OFFICE, LAB, stage),
                    "weakens gateway-forbidden/sw1/Vlan240/stage")
                .consequence())
        .startsWith("Nothing is routed now, as no open port of the switch carries stage (240);");
  }

  @Test
  void an_address_on_a_switch_that_does_not_route_is_a_hosts() {
    String design =
        DESIGN
            .replace("  sw1: [office, lab]\n", "  sw2: [office, lab]\n")
            .replace("  sw2: [office]\n", "");
    String stage = "interface Vlan240\n ip address 198.51.100.1 255.255.255.0\n";
    String guest = "interface Vlan270\n ip address 203.0.113.1 255.255.255.0\n";
    // no link of the design joins the two switches
    assertThat(ids(audit(design, VLANS, "no ip routing\n!\n", DESK, BENCH, stage, guest)))
        .containsExactly("breaks gateway-unreachable///lab", "breaks gateway-unreachable///office");
  }

  @Test
  void a_design_without_gateways_does_not_say_where_they_are() {
    String design =
        DESIGN
            .replaceFirst("(?s)gateways:.*", "")
            .replace("gateway: required", "gateway: optional");
    assertThat(ids(audit(design, VLANS, ROUTING, DESK, BENCH, OFFICE, LAB))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "ip access-group LAB in, true",
    "ip access-group LAB out, true",
    "ip access-group LAB in; no ip access-group OLD out, true",
    "ip access-group LAB in; no ip access-group LAB in, false",
    "no ip access-group LAB in, false",
  })
  void a_filter_in_either_direction_is_one(String lines, boolean filtered) {
    String lab = LAB.replace(" ip access-group LAB in\n", " " + lines.replace("; ", "\n ") + "\n");
    List<String> found = ids(VLANS, ROUTING, DESK, BENCH, OFFICE, lab);
    if (filtered) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).containsExactly("weakens gateway-filter-missing/sw1/Vlan260/lab");
    }
  }

  @Test
  void what_does_not_route_needs_no_filter_until_it_does() {
    String bare = LAB.replace(" ip access-group LAB in\n", "");
    String untold =
        "Hosts in lab (260) reach nothing outside their VLAN: the design gives them no other"
            + " gateway.";
    String taken = " Now the bench at sw1 GigabitEthernet1/0/2 reaches no gateway in lab (260).";
    assertThat(
            only(
                    audit(DESIGN, VLANS, ROUTING, DESK, BENCH, OFFICE, LAB + " shutdown\n"),
                    "breaks gateway-not-working/sw1/Vlan260/lab")
                .consequence())
        .isEqualTo(untold + taken);
    assertThat(
            only(
                    audit(DESIGN, VLANS, ROUTING, DESK, BENCH, OFFICE, bare + " shutdown\n"),
                    "breaks gateway-not-working/sw1/Vlan260/lab")
                .consequence())
        .isEqualTo(
            untold
                + " Once it works, lab (260) lies open to every network that the switch reaches:"
                + " no packet filter stands on the gateway."
                + taken);
    assertThat(
            only(
                    audit(DESIGN, VLANS, "no ip routing\n!\n", DESK, BENCH, OFFICE, bare),
                    "breaks gateway-not-working/sw1//")
                .consequence())
        .endsWith(
            "Once it routes, lab (260) lies open to every network that it reaches: no packet filter"
                + " stands on the gateway."
                + taken);
  }

  @Test
  void a_data_centre_text_routes_without_a_line() {
    String text =
        "!Command: show running-config\n!Time: Tue Nov 24 22:14:07 2026\n\nversion 9.3(8)\n"
            + "hostname sw1\n\nfeature interface-vlan\n\nvlan 1,250\n\ninterface Vlan250\n"
            + "  %s\n  ip address 192.0.2.1/25\n\ninterface Ethernet1/1\n"
            + "  switchport access vlan 250\n  no shutdown\n\nline vty\n";
    String design =
        DESIGN
            .replace("Gi1/0/1: desk, Gi1/0/2: bench", "Eth1/1: desk")
            .replace("sw1: [office, lab]", "sw1: [office]")
            .replace("sw2: [office]", "sw2: [office, lab]");
    assertThat(ids(RuleCaseRun.run(design, text.formatted("no shutdown")))).isEmpty();
    assertThat(ids(RuleCaseRun.run(design, text.formatted("shutdown"))))
        .containsExactly("weakens gateway-not-working/sw1/Vlan250/office");
  }
}
