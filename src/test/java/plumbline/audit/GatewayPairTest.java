package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;
import plumbline.finding.Severity;

/**
 * Whole audits of two gateways of one VLAN. Of VRRP: priority 100 where none is set and preemption
 * on (RFC 6527, {@code vrrpv3OperationsPriority} and {@code vrrpv3OperationsPreemptMode}); 255 for
 * the owner of the address (RFC 5798, section 5.2.4), which always takes over (6.1); of equals the
 * higher address (6.4.2); another version or group is dropped (7.1). Of the proprietary protocols
 * the same questions are common practice, no source.
 */
class GatewayPairTest {
  @TempDir private Path scratch;

  private static final String A = "ip address 192.0.2.2 255.255.255.128";
  private static final String B = "ip address 192.0.2.3 255.255.255.128";

  private static String design(String need, String first, String second) {
    return """
        format: plumbline-design/1
        vlans:
          office: {id: 250, gateway: %s}
          lab: {id: 260}
          parked: {id: 999, unused: true}
        roles: {link: {mode: trunk, native: parked, tagged: [office, lab], negotiate: false}}
        switches: {sw1: {}, sw2: {}}
        links: [{ends: [sw1 Gi1/0/48, sw2 Gi1/0/48], role: link}]
        gateways: {sw1: {office: {%s}}, sw2: {office: {%s}}}
        """
        .formatted(need, first, second);
  }

  private static String device(String name, String trunk, String lines) {
    return "version 15.2\nhostname "
        + name
        + "\nvtp mode transparent\nspanning-tree mode rapid-pvst\nvlan 250,260,999\nip routing\n"
        + "interface GigabitEthernet1/0/48\n switchport mode trunk\n switchport nonegotiate\n"
        + " switchport trunk native vlan 999\n switchport trunk allowed vlan "
        + trunk
        + "\ninterface GigabitEthernet1/0/1\n switchport mode access\n switchport access vlan 250\n"
        + "interface Vlan250\n "
        + lines.replaceAll(" *; *", "\n ")
        + "\nline con 0\nend\n";
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

  private AuditOutcome pair(String design, String first, String second) throws IOException {
    return run(design, device("sw1", "250,260", first), device("sw2", "250,260", second));
  }

  private static List<Finding> told(AuditOutcome outcome) {
    return outcome.findings().stream()
        .filter(one -> one.rule().equals("gateway-not-paired"))
        .toList();
  }

  private Finding only(String design, String first, String second) throws IOException {
    AuditOutcome outcome = pair(design, first, second);
    assertThat(outcome.findings())
        .as("%s", RuleCaseRun.print(outcome.findings()))
        .extracting(Finding::rule)
        .containsOnly("gateway-not-paired", "port-undeclared");
    assertThat(told(outcome)).hasSize(1);
    return told(outcome).get(0);
  }

  private Finding only(String first, String second) throws IOException {
    return only(design("required", "", ""), first, second);
  }

  private static long conforming(AuditOutcome outcome) {
    return outcome.checks().stream()
        .filter(count -> count.rule().equals("gateway-not-paired"))
        .mapToLong(count -> count.conforms())
        .sum();
  }

  private void conforms(String design, String first, String second) throws IOException {
    AuditOutcome outcome = pair(design, first, second);
    assertThat(told(outcome)).isEmpty();
    assertThat(conforming(outcome)).isEqualTo(1);
  }

  private static final String TORN =
      "Neither hears the other: both are active and answer for 192.0.2.1 at the same time, and"
          + " hosts are torn between the two.";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          vrrp 5 ip 192.0.2.1 | vrrp 6 ip 192.0.2.1 | vrrp group 5 for 192.0.2.1; vrrp group 6 for 192.0.2.1
          vrrp 5 ip 192.0.2.1 | standby 5 ip 192.0.2.1 | vrrp group 5 for 192.0.2.1; standby group 5 for 192.0.2.1
          standby 5 ip 192.0.2.1 | standby 5 ip 192.0.2.1; standby version 2 | standby version 1; standby version 2
          vrrp 5 ip 192.0.2.1 | vrrp 5 address-family ipv4; vrrp 5 address-family ipv4 address 192.0.2.1 primary | vrrp version 2; vrrp version 3
          glbp 5 ip 192.0.2.1 | standby 5 ip 192.0.2.1 | glbp group 5 for 192.0.2.1; standby group 5 for 192.0.2.1
          """)
  void gateways_that_do_not_hear_each_other_are_both_active(
      String first, String second, String found) throws IOException {
    Finding one = only(A + ";" + first, B + ";" + second);
    assertThat(one.found()).isEqualTo(found + " at sw2 Vlan250");
    assertThat(one.consequence()).isEqualTo(TORN);
    assertThat(one.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(one.id()).isEqualTo("gateway-not-paired/sw1/Vlan250/office");
    assertThat(one.others()).extracting(Object::toString).containsExactly("sw2 Vlan250");
    assertThat(one.evidence().stream().map(proof -> proof.file().orElse("")))
        .contains("sw1.cfg", "sw2.cfg");
  }

  @Test
  void the_third_version_on_both_is_one_version_in_whatever_dialect() throws IOException {
    String family = "vrrp 5 address-family ipv4; vrrp 5 address-family ipv4 address 192.0.2.1; ";
    conforms(
        design("required", "", ""),
        A + ";" + family + "vrrp 5 address-family ipv4 priority 120",
        B + ";" + family);
  }

  @Test
  void other_virtual_addresses_back_nothing_up() throws IOException {
    Finding one =
        only(A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 120", B + "; vrrp 5 ip 192.0.2.9");
    assertThat(one.found())
        .isEqualTo("vrrp group 5 for 192.0.2.1; vrrp group 5 for 192.0.2.9 at sw2 Vlan250");
    assertThat(one.consequence())
        .isEqualTo(
            "Neither backs the other up: hosts that use 192.0.2.1 lose their gateway at the latest"
                + " when sw1 fails, and hosts that use 192.0.2.9 when sw2 does.");
  }

  @Test
  void a_gateway_without_a_group_is_the_end_that_departs() throws IOException {
    Finding second = only(A + "; vrrp 5 ip 192.0.2.1", B);
    assertThat(second.id()).isEqualTo("gateway-not-paired/sw2/Vlan250/office");
    assertThat(second.found())
        .isEqualTo("no redundancy group; vrrp group 5 for 192.0.2.1 at sw1 Vlan250");
    assertThat(second.consequence())
        .isEqualTo(
            "Only sw1 answers for 192.0.2.1: when it fails, hosts that use it lose their gateway.");
    Finding first = only(A, B + "; vrrp 5 ip 192.0.2.1");
    assertThat(first.id()).isEqualTo("gateway-not-paired/sw1/Vlan250/office");
    Finding taken = only(A.replace("2.2", "2.1"), B + "; vrrp 5 ip 192.0.2.1");
    assertThat(taken.consequence())
        .isEqualTo(
            "Both answer for 192.0.2.1, sw1 with an address of its own: hosts are torn between the"
                + " two.");
  }

  @Test
  void one_of_two_groups_that_the_other_lacks_is_told_with_what_it_serves() throws IOException {
    Finding one =
        only(
            A + "; standby 1 ip 192.0.2.1; standby 1 priority 110; standby 2 ip 192.0.2.9",
            B + "; standby 1 ip 192.0.2.1");
    assertThat(one.found())
        .isEqualTo(
            "no standby group 2 for 192.0.2.9; standby group 2 for 192.0.2.9 at sw1 Vlan250");
  }

  @Test
  void without_any_group_hosts_lose_the_gateway_that_fails_and_only_where_one_is_promised()
      throws IOException {
    Finding one = only(A, B);
    assertThat(one.found()).isEqualTo("no redundancy group; no redundancy group at sw2 Vlan250");
    assertThat(one.consequence())
        .isEqualTo(
            "Neither backs the other up: hosts that use 192.0.2.2 lose their gateway when sw1"
                + " fails, and hosts that use 192.0.2.3 when sw2 does.");
    conforms(design("optional", "", ""), A, B);
  }

  @Test
  void the_same_plain_address_twice_is_no_pair_either() throws IOException {
    Finding one = only(A, A);
    assertThat(one.found())
        .isEqualTo("own address 192.0.2.2; own address 192.0.2.2 at sw2 Vlan250");
    assertThat(one.consequence()).startsWith("Both claim 192.0.2.2 for themselves: ");
    assertThat(one.severity()).isEqualTo(Severity.WEAKENS);
  }

  @Test
  void subnets_must_be_equal_masks_included() throws IOException {
    String group = "; vrrp 5 ip 192.0.2.1";
    Finding mask =
        only(A + group + "; vrrp 5 priority 110", "ip address 192.0.2.3 255.255.255.0" + group);
    assertThat(mask.found()).isEqualTo("subnet 192.0.2.0/25; subnet 192.0.2.0/24 at sw2 Vlan250");
    Finding further =
        only(
            A + group + "; vrrp 5 priority 110; ip address 198.51.100.2 255.255.255.0 secondary",
            B + group);
    assertThat(further.found())
        .isEqualTo("subnets 192.0.2.0/25 and 198.51.100.0/24; subnet 192.0.2.0/25 at sw2 Vlan250");
  }

  @Test
  void equal_priorities_are_untidy_and_defaults_count() throws IOException {
    Finding one =
        only(A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 100", B + "; vrrp 5 ip 192.0.2.1");
    assertThat(one.severity()).isEqualTo(Severity.UNTIDY);
    assertThat(one.found()).isEqualTo("priority 100; priority 100 at sw2 Vlan250");
    assertThat(one.consequence())
        .isEqualTo(
            "Which one is active is left to the higher address, 192.0.2.3 of sw2, or to which came"
                + " up first.");
  }

  @Test
  void equal_priorities_weaken_where_the_address_makes_the_wrong_one_active() throws IOException {
    String group = "; standby 5 ip 192.0.2.1; standby 5 preempt";
    Finding wrong = only(design("required", "active: true", ""), A + group, B + group);
    assertThat(wrong.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(wrong.consequence())
        .isEqualTo(
            "The active one is the one with the higher address, 192.0.2.3 of sw2, and not sw1.");
    Finding right = only(design("required", "", "active: true"), A + group, B + group);
    assertThat(right.severity()).isEqualTo(Severity.UNTIDY);
  }

  @Test
  void the_designed_active_one_needs_the_higher_priority() throws IOException {
    String design = design("required", "", "active: true");
    String group = "; vrrp 5 ip 192.0.2.1";
    Finding one = only(design, A + group + "; vrrp 5 priority 110", B + group);
    assertThat(one.id()).isEqualTo("gateway-not-paired/sw2/Vlan250/office");
    assertThat(one.found()).isEqualTo("priority 100; priority 110 at sw1 Vlan250");
    assertThat(one.designed())
        .isEqualTo("gateways for office (250) on sw1 and sw2 that back each other up, sw2 active");
    assertThat(one.consequence())
        .isEqualTo(
            "sw1 has the higher priority and is active instead of sw2: what hosts in office (250)"
                + " send takes another way than designed.");
    // not to be active is to say that the other one is
    Finding other =
        only(
            design("required", "active: false", ""),
            A + group + "; vrrp 5 priority 110",
            B + group);
    assertThat(other.id()).isEqualTo(one.id());
    conforms(design, A + group, B + group + "; vrrp 5 priority 110");
  }

  @Test
  void a_tracked_object_is_said_to_leave_the_priority_open_and_not_guessed() throws IOException {
    Finding one =
        only(
            design("required", "", "active: true"),
            A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 110; vrrp 5 track 1 decrement 20",
            B + "; vrrp 5 ip 192.0.2.1");
    assertThat(one.consequence())
        .endsWith(
            " A tracked object changes the priority of sw1 while it is down; whether it is cannot be"
                + " told from a config.");
  }

  @Test
  void without_preemption_the_designed_active_one_does_not_come_back() throws IOException {
    String design = design("required", "active: true", "");
    String first = A + "; standby 5 ip 192.0.2.1; standby 5 priority 110";
    String second = B + "; standby 5 ip 192.0.2.1";
    Finding one = only(design, first, second);
    assertThat(one.found())
        .isEqualTo("priority 110 without preemption; priority 100 at sw2 Vlan250");
    assertThat(one.consequence())
        .isEqualTo(
            "After sw1 was down, it does not take over again: sw2 stays active until it fails.");
    conforms(design, first + "; standby 5 preempt", second);
    conforms(design("required", "", ""), first, second);
    // preemption is on in one protocol and off in the other unless a line says so
    conforms(design, first.replace("standby", "vrrp"), second.replace("standby", "vrrp"));
    assertThat(
            only(
                    design,
                    first.replace("standby", "vrrp") + "; no vrrp 5 preempt",
                    second.replace("standby", "vrrp"))
                .found())
        .contains("without preemption");
  }

  @Test
  void the_owner_of_the_virtual_address_has_the_highest_priority_whatever_is_configured()
      throws IOException {
    String owner = A.replace("2.2", "2.1") + "; vrrp 5 ip 192.0.2.1; no vrrp 5 preempt";
    String other = B + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 254";
    conforms(design("required", "active: true", ""), owner, other);
    assertThat(only(design("required", "", "active: true"), owner, other).found())
        .isEqualTo("priority 254; priority 255 at sw1 Vlan250");
  }

  @Test
  void groups_that_share_the_load_may_each_have_another_active_gateway() throws IOException {
    String groups = "; standby 1 ip 192.0.2.1; standby 2 ip 192.0.2.9; ";
    conforms(
        design("required", "active: true", ""),
        A + groups + "standby 1 priority 110; standby 1 preempt",
        B + groups + "standby 2 priority 110; standby 2 preempt");
  }

  @Test
  void an_anycast_gateway_has_no_priority_and_the_same_address() throws IOException {
    conforms(
        design("required", "", ""),
        A + "; ip virtual-router address 192.0.2.1",
        B + "; ip virtual-router address 192.0.2.1");
    Finding other =
        only(
            A + "; ip virtual-router address 192.0.2.1",
            B + "; ip virtual-router address 192.0.2.9");
    assertThat(other.found())
        .isEqualTo("anycast address 192.0.2.1; anycast address 192.0.2.9 at sw2 Vlan250");
    String own = A.replace("2.2", "2.1");
    conforms(
        design("required", "", ""),
        own + "; fabric forwarding mode anycast-gateway",
        own + "; fabric forwarding mode anycast-gateway");
    assertThat(only(own + "; fabric forwarding mode anycast-gateway", own).id())
        .isEqualTo("gateway-not-paired/sw2/Vlan250/office");
  }

  @Test
  void a_group_may_learn_its_address_but_not_do_without() throws IOException {
    String first = A + "; standby 5 ip 192.0.2.1; standby 5 priority 110";
    conforms(design("required", "", ""), first, B + "; standby 5 ip");
    Finding one = only(first, B + "; standby 5 preempt");
    assertThat(one.id()).isEqualTo("gateway-not-paired/sw2/Vlan250/office");
    assertThat(one.found())
        .isEqualTo(
            "standby group 5 without a virtual address; standby group 5 for 192.0.2.1 at sw1"
                + " Vlan250");
    assertThat(only(A + "; vrrp 5 priority 110", B + "; vrrp 5 priority 100").consequence())
        .isEqualTo(
            "The group has no address to answer for: nothing moves to the other switch when one"
                + " fails.");
  }

  @Test
  void a_gateway_that_does_not_work_on_its_own_is_told_of_and_not_the_pair() throws IOException {
    String first = A + "; vrrp 5 ip 192.0.2.1";
    for (String second : List.of(B + "; shutdown", "no ip address", "vrrp 9 ip 192.0.2.1")) {
      AuditOutcome outcome = pair(design("required", "", ""), first, second);
      assertThat(outcome.findings()).extracting(Finding::rule).contains("gateway-not-working");
      assertThat(told(outcome)).isEmpty();
      assertThat(conforming(outcome)).isZero();
    }
  }

  @Test
  void where_one_config_was_not_read_nothing_is_said_of_the_pair() throws IOException {
    AuditOutcome outcome =
        run(design("required", "", ""), device("sw1", "250,260", A + "; vrrp 5 ip 192.0.2.1"));
    assertThat(told(outcome)).isEmpty();
    assertThat(conforming(outcome)).isZero();
  }

  @Test
  void what_a_line_leaves_open_is_not_taken_for_the_lack_of_a_group() throws IOException {
    Finding garbled =
        only(
            A + "; standby 5 ip 192.0.2.1; standby 5 priority 110",
            B + "; standby 5 ip 192.0.2.1; standby 5 priorty 90");
    assertThat(garbled.severity()).isEqualTo(Severity.UNVERIFIED);
    Finding none = only(A + "; standby 5 ip 192.0.2.1", B + "; standby 5 ip2 192.0.2.1");
    assertThat(none.severity()).isEqualTo(Severity.UNVERIFIED);
    Finding lease =
        only(
            A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 110",
            "ip address dhcp; vrrp 5 ip 192.0.2.1");
    assertThat(lease.severity()).isEqualTo(Severity.UNVERIFIED);
    assertThat(lease.found()).contains("its address is not in the text");
  }

  @Test
  void in_a_script_no_line_is_no_default() throws IOException {
    String script = "hostname sw2\ninterface Vlan250\nip address 192.0.2.3 255.255.255.128\nexit\n";
    AuditOutcome outcome =
        run(
            design("required", "", ""),
            device("sw1", "250,260", A + "; vrrp 5 ip 192.0.2.1"),
            script);
    assertThat(told(outcome)).extracting(Finding::severity).containsExactly(Severity.UNVERIFIED);
    assertThat(told(outcome).get(0).switchName()).isEqualTo("sw2");
  }

  @Test
  void a_vlan_that_no_link_is_designed_to_carry_leaves_both_active() throws IOException {
    String design = design("required", "", "").replace("tagged: [office, lab]", "tagged: [lab]");
    String first = A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 110";
    String second = B + "; vrrp 5 ip 192.0.2.1";
    AuditOutcome outcome = run(design, device("sw1", "260", first), device("sw2", "260", second));
    assertThat(told(outcome)).hasSize(1);
    Finding one = told(outcome).get(0);
    assertThat(one.found()).isEqualTo("office (250) does not pass between sw1 and sw2");
    assertThat(one.consequence())
        .isEqualTo(
            "They do not hear each other: both are active, each for its own part of the VLAN, and"
                + " replies that come in through the wrong one are lost.");
    // what a link lacks of its role is told there
    AuditOutcome missing =
        run(design("required", "", ""), device("sw1", "260", first), device("sw2", "260", second));
    assertThat(missing.findings()).extracting(Finding::rule).contains("tagged-vlan-missing");
    assertThat(told(missing)).isEmpty();
  }

  @Test
  void where_the_design_names_no_link_the_vlan_may_pass_outside_it() throws IOException {
    String design = design("required", "", "");
    String unlinked = design.replaceAll("links: .*\n", "");
    AuditOutcome outcome =
        pair(
            unlinked,
            A + "; vrrp 5 ip 192.0.2.1; vrrp 5 priority 110",
            B + "; vrrp 5 ip 192.0.2.1");
    assertThat(told(outcome)).isEmpty();
    assertThat(conforming(outcome)).isZero();
    assertThat(told(pair(unlinked, A + "; vrrp 5 ip 192.0.2.1", B))).hasSize(1);
  }

  @Test
  void of_three_gateways_the_one_that_is_unlike_the_others_departs() throws IOException {
    String design =
        design("required", "", "")
            .replace("switches: {sw1: {}, sw2: {}}", "switches: {sw1: {}, sw2: {}, sw3: {}}")
            .replace("links: [", "links: [{ends: [sw1 Gi1/0/47, sw3 Gi1/0/48], role: link}, ")
            .replace("{office: {}}}", "{office: {}}, sw3: {office: {}}}");
    String third = "ip address 192.0.2.4 255.255.255.128; vrrp 5 ip 192.0.2.1; vrrp 5 priority 90";
    String trunk =
        "interface GigabitEthernet1/0/47\n switchport mode trunk\n switchport nonegotiate\n"
            + " switchport trunk native vlan 999\n switchport trunk allowed vlan 250,260\nline con 0";
    AuditOutcome outcome =
        run(
            design,
            device("sw1", "250,260", A + "; vrrp 6 ip 192.0.2.1").replace("line con 0", trunk),
            device("sw2", "250,260", B + "; vrrp 5 ip 192.0.2.1"),
            device("sw3", "250,260", third));
    assertThat(told(outcome)).hasSize(1);
    assertThat(told(outcome).get(0).others())
        .extracting(Object::toString)
        .containsExactly("sw2 Vlan250");
    assertThat(told(outcome).get(0).switchName()).isEqualTo("sw1");
    assertThat(conforming(outcome)).isEqualTo(1);
  }
}
