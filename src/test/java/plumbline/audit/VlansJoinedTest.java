package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import plumbline.finding.Finding;
import plumbline.finding.Severity;

/**
 * Whole audits of links whose untagged frames leave in one VLAN and arrive in another: an untagged
 * frame is taken for the receiving port's VLAN (RFC 4363, {@code dot1qPvid}); trees per VLAN notice
 * it and block both, other trees do not (section 7 of the product contract; common practice, no
 * source).
 */
class VlansJoinedTest {
  @TempDir private Path scratch;

  private static final String LINK = "{ends: [sw1 Gi1/0/48, sw2 Gi1/0/48], role: link}";
  private static final String SILENT = "rules: {silent: [link-native-differs]}\n";

  private static String design(String role, String links, String more) {
    return """
        format: plumbline-design/1
        vlans:
          hypervisor: {id: 220}
          voice-a: {id: 231, apart-from: [voice-b]}
          voice-b: {id: 232}
          rehearsal: {id: 240, gateway: forbidden}
          office: {id: 250}
          parked: {id: 999, gateway: forbidden, unused: true}
        roles: {link: {mode: trunk%s}, other: {mode: trunk, native: office}, desk: {access: office}}
        switches: {sw1: {}, sw2: {}, sw3: {}}
        links: [%s]
        """
            .formatted(role, links)
        + more;
  }

  private static String device(String name, String tree, String... ports) {
    StringBuilder text =
        new StringBuilder("version 15.2\nhostname ")
            .append(name)
            .append("\nvtp mode transparent\n")
            .append(tree)
            .append("\nvlan 220,231,232,240,250,999\nip routing\n");
    for (String port : ports) {
      String[] parts = port.split(": ", 2);
      text.append("interface ").append(parts[0]).append('\n');
      if (parts[0].startsWith("Gig")) {
        text.append(" switchport mode trunk\n switchport nonegotiate\n");
      }
      text.append(' ').append(parts[1].replaceAll(" *; *", "\n ")).append('\n');
    }
    return text.append("line con 0\nend\n").toString();
  }

  private static String trunk(int port, int vlan, String... more) {
    return "GigabitEthernet1/0/"
        + port
        + ": switchport trunk native vlan "
        + vlan
        + String.join("", List.of(more).stream().map(line -> "; " + line).toList());
  }

  private AuditOutcome run(String design, String... devices) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    String known = design;
    if (devices.length == 2) {
      known = known.replace(", sw3: {}", "");
    }
    Files.writeString(site.resolve("design.yaml"), known);
    for (int index = 0; index < devices.length; index++) {
      Files.writeString(site.resolve("sw" + (index + 1) + ".cfg"), devices[index]);
    }
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static Finding only(AuditOutcome outcome, String rule) {
    assertThat(outcome.findings())
        .as("%s", RuleCaseRun.print(outcome.findings()))
        .extracting(Finding::rule)
        .containsExactly(rule);
    return outcome.findings().get(0);
  }

  private static long conforming(AuditOutcome outcome) {
    return outcome.checks().stream()
        .filter(count -> count.rule().equals("vlans-joined"))
        .mapToLong(count -> count.conforms())
        .sum();
  }

  private static final String MST = "spanning-tree mode mst";
  private static final String PER_VLAN = "spanning-tree mode rapid-pvst";
  private static final String ONE =
      " are one broadcast domain: a loop, a flood or a wrong address in one reaches the other.";

  @Test
  void the_finding_of_the_link_tells_which_vlans_become_one_and_weakens() throws IOException {
    Finding found =
        only(
            run(
                design("", LINK, ""),
                device("sw1", MST, trunk(48, 220)),
                device("sw2", MST, trunk(48, 250))),
            "link-native-differs");
    assertThat(found.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(found.consequence())
        .isEqualTo(
            "Untagged frames of hypervisor (220) arrive in office (250), and the other way round:"
                + " no spanning tree notices it, and they become one broadcast domain here."
                + " hypervisor (220) and office (250)"
                + ONE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", ", native: voice-a"})
  void vlans_that_must_stay_apart_break_whatever_the_role_names(String role) throws IOException {
    AuditOutcome outcome =
        run(
            design(role, LINK, ""),
            device("sw1", MST, trunk(48, 231)),
            device("sw2", MST, trunk(48, 232)));
    Finding found = only(outcome, role.isEmpty() ? "link-native-differs" : "native-vlan-in-use");
    assertThat(found.switchName()).isEqualTo(role.isEmpty() ? "sw1" : "sw2");
    assertThat(found.severity()).isEqualTo(Severity.BREAKS);
    assertThat(found.consequence())
        .endsWith(
            "voice-a (231) and voice-b (232)"
                + ONE
                + " voice-a (231) and voice-b (232) must stay"
                + " apart.");
  }

  @Test
  void a_native_vlan_as_designed_at_one_end_is_told_where_the_other_departs() throws IOException {
    AuditOutcome outcome =
        run(
            design(", native: parked", LINK, ""),
            device("sw1", MST, trunk(48, 999)),
            device("sw2", MST, trunk(48, 777)));
    // a VLAN that nobody declares becomes one with no other of the design
    assertThat(only(outcome, "native-vlan-differs").consequence())
        .doesNotContain("a loop, a flood or a wrong address");
    Finding declared =
        only(
            run(
                design(", native: parked", LINK, ""),
                device("sw1", MST, trunk(48, 999)),
                device("sw2", MST, trunk(48, 250))),
            "native-vlan-in-use");
    assertThat(declared.id())
        .isEqualTo(
            "native-vlan-in-use/sw2/GigabitEthernet1/0/48/link to sw1 GigabitEthernet1/0/48");
    assertThat(declared.consequence()).endsWith("office (250) and parked (999)" + ONE);
  }

  @Test
  void trees_per_vlan_at_both_ends_cut_and_join_nothing() throws IOException {
    AuditOutcome outcome =
        run(
            design("", LINK, SILENT),
            device("sw1", PER_VLAN, trunk(48, 231)),
            device("sw2", PER_VLAN, trunk(48, 232)));
    assertThat(outcome.findings()).isEmpty();
    assertThat(conforming(outcome)).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no spanning-tree vlan 231",
        "spanning-tree mode rstp",
        "no spanning-tree vlan 1-4094"
      })
  void a_tree_that_is_off_or_single_at_one_end_is_enough(String line) throws IOException {
    String first = line.contains("rstp") ? line : PER_VLAN + "\n" + line;
    AuditOutcome outcome =
        run(
            design("", LINK, SILENT.replace("[", "[spanning-tree-off, ")),
            device("sw1", first, trunk(48, 231)),
            device("sw2", PER_VLAN, trunk(48, 232)));
    assertThat(only(outcome, "vlans-joined").id())
        .isEqualTo("vlans-joined/sw1/GigabitEthernet1/0/48/link to sw2 GigabitEthernet1/0/48");
  }

  @Test
  void without_a_finding_of_the_link_a_filter_that_hides_it_tells_it() throws IOException {
    AuditOutcome outcome =
        run(
            design("", LINK, SILENT),
            device("sw1", PER_VLAN, trunk(48, 231, "spanning-tree bpdufilter enable")),
            device("sw2", PER_VLAN, trunk(48, 232)));
    Finding found = only(outcome, "bpdu-filter-set");
    assertThat(found.severity()).isEqualTo(Severity.BREAKS);
    assertThat(found.consequence()).endsWith("voice-a (231) and voice-b (232) must stay apart.");
    Finding own =
        only(
            run(
                design("", LINK, SILENT.replace("[", "[bpdu-filter-set, ")),
                device("sw1", PER_VLAN, trunk(48, 231, "spanning-tree bpdufilter enable")),
                device("sw2", PER_VLAN, trunk(48, 232))),
            "vlans-joined");
    assertThat(own.severity()).isEqualTo(Severity.BREAKS);
  }

  @Test
  void a_vlan_without_gateways_must_not_reach_that_of_another() throws IOException {
    String gateway = "gateways: {sw2: [office]}\n";
    String routed = "Vlan250: ip address 192.0.2.1 255.255.255.0";
    Finding found =
        only(
            run(
                design("", LINK, SILENT + gateway),
                device("sw1", MST, trunk(48, 240)),
                device("sw2", MST, trunk(48, 250), routed)),
            "vlans-joined");
    assertThat(found.severity()).isEqualTo(Severity.BREAKS);
    assertThat(found.consequence())
        .endsWith("rehearsal (240), which must have no gateway, reaches that of office (250).");
    // the gateway is in the other part of office, which is not joined
    Finding apart =
        only(
            run(
                design("", LINK, SILENT),
                device("sw1", MST, trunk(48, 240)),
                device("sw2", MST, trunk(48, 250))),
            "vlans-joined");
    assertThat(apart.severity()).isEqualTo(Severity.WEAKENS);
  }

  @Test
  void nobody_lives_in_an_unused_vlan_so_that_it_only_weakens() throws IOException {
    String design = design("", LINK, SILENT).replace("sw2: {}", "sw2: {ports: {Gi1/0/1: desk}}");
    Finding found =
        only(
            run(
                design,
                device("sw1", MST, trunk(48, 999)),
                device("sw2", MST, trunk(48, 250))
                    .replace(
                        "line con 0",
                        "interface GigabitEthernet1/0/1\n switchport mode access\n"
                            + " switchport access vlan 250\nline con 0")),
            "vlans-joined");
    assertThat(found.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(found.consequence())
        .endsWith(
            " Hosts of office (250) are in parked (999) too, in which none may live: whoever is"
                + " plugged in there is among them.");
  }

  private static final String CHAIN = LINK + ", {ends: [sw2 Gi1/0/47, sw3 Gi1/0/48], role: link}";

  @Test
  void a_chain_of_links_joins_what_is_at_its_ends_and_each_link_tells_it() throws IOException {
    AuditOutcome outcome =
        run(
            design("", CHAIN, SILENT),
            device("sw1", MST, trunk(48, 231)),
            device("sw2", MST, trunk(48, 1), trunk(47, 1)),
            device("sw3", MST, trunk(48, 232)));
    assertThat(outcome.findings())
        .extracting(Finding::id)
        .containsExactly(
            "vlans-joined/sw1/GigabitEthernet1/0/48/link to sw2 GigabitEthernet1/0/48",
            "vlans-joined/sw2/GigabitEthernet1/0/47/link to sw3 GigabitEthernet1/0/48");
    assertThat(outcome.findings())
        .allMatch(one -> one.severity() == Severity.BREAKS)
        .allMatch(one -> one.consequence().startsWith("voice-a (231) and voice-b (232)" + ONE));
  }

  @Test
  void a_link_that_takes_no_part_in_it_does_not_carry_its_severity() throws IOException {
    AuditOutcome outcome =
        run(
            design("", CHAIN, SILENT),
            device("sw1", MST, trunk(48, 231)),
            device("sw2", MST, trunk(48, 232), trunk(47, 232)),
            device("sw3", MST, trunk(48, 220)));
    assertThat(outcome.findings())
        .extracting(Finding::severity)
        .containsExactly(Severity.BREAKS, Severity.WEAKENS);
    assertThat(outcome.findings().get(1).consequence())
        .contains("hypervisor (220), voice-a (231) and voice-b (232)");
  }

  @Test
  void two_links_in_different_parts_of_a_vlan_make_no_chain() throws IOException {
    // office at the first link and office at the second are not one part: nothing carries it there
    String links =
        "{ends: [sw1 Gi1/0/48, sw2 Gi1/0/48], role: link},"
            + " {ends: [sw2 Gi1/0/47, sw3 Gi1/0/48], role: link},"
            + " {ends: [sw3 Gi1/0/47, sw1 Gi1/0/47], role: link}";
    AuditOutcome outcome =
        run(
            design("", links, SILENT.replace("[", "[link-vlans-differ, ")),
            device(
                "sw1",
                MST,
                trunk(48, 231, "switchport trunk allowed vlan 231"),
                trunk(47, 220, "switchport trunk allowed vlan 220")),
            device(
                "sw2",
                MST,
                trunk(48, 250, "switchport trunk allowed vlan 250"),
                trunk(47, 220, "switchport trunk allowed vlan 220")),
            device(
                "sw3",
                MST,
                trunk(48, 220, "switchport trunk allowed vlan 220"),
                trunk(47, 220, "switchport trunk allowed vlan 220")));
    assertThat(outcome.findings())
        .filteredOn(one -> one.rule().equals("vlans-joined"))
        .hasSize(1)
        .allMatch(one -> one.consequence().startsWith("voice-a (231) and office (250) "));
  }

  @ParameterizedTest
  @ValueSource(strings = {"switchport trunk allowed vlan 220", "switchport trunk native vlan tag"})
  void a_native_vlan_that_passes_no_untagged_frames_joins_nothing(String line) throws IOException {
    AuditOutcome outcome =
        run(
            design("", LINK, SILENT.replace("[", "[link-vlans-differ, ")),
            device("sw1", MST, trunk(48, 231, line)),
            device("sw2", MST, trunk(48, 232)));
    assertThat(outcome.findings()).isEmpty();
    assertThat(conforming(outcome)).isEqualTo(1);
  }

  @Test
  void whether_mixed_trees_let_the_link_forward_is_left_open() throws IOException {
    Finding found =
        only(
            run(
                design("", LINK, SILENT),
                device("sw1", MST, trunk(48, 231)),
                device("sw2", PER_VLAN, trunk(48, 232))),
            "vlans-joined");
    assertThat(found.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(found.consequence())
        .startsWith(
            "voice-a (231) and voice-b (232) are one broadcast domain unless spanning tree blocks"
                + " the link: ");
  }

  @Test
  void a_filter_that_the_text_leaves_open_leaves_it_open() throws IOException {
    AuditOutcome outcome =
        run(
            design("", LINK, SILENT.replace("[", "[bpdu-filter-set, statement-unknown, ")),
            device("sw1", PER_VLAN, trunk(48, 231, "spanning-tree bpdufilter perhaps")),
            device("sw2", PER_VLAN, trunk(48, 232)));
    Finding open = only(outcome, "vlans-joined");
    assertThat(open.severity()).isEqualTo(Severity.UNVERIFIED);
    assertThat(open.switchName()).isEqualTo("sw1");
  }

  @Test
  void a_link_that_the_tree_blocks_joins_them_when_it_takes_over() throws IOException {
    String links = LINK + ", {ends: [sw1 Gi1/0/47, sw2 Gi1/0/47], role: link}";
    Finding found =
        only(
            run(
                design("", links, SILENT),
                device(
                    "sw1",
                    MST + "\nspanning-tree mst 0 priority 4096",
                    trunk(47, 999, "spanning-tree mst 0 cost 20000"),
                    trunk(48, 231, "spanning-tree mst 0 cost 20000")),
                device(
                    "sw2",
                    MST,
                    trunk(47, 999),
                    trunk(48, 232, "spanning-tree mst 0 cost 1000000"))),
            "vlans-joined");
    assertThat(found.severity()).isEqualTo(Severity.WEAKENS);
    assertThat(found.consequence())
        .startsWith(
            "voice-a (231) and voice-b (232) become one broadcast domain when the link takes over,"
                + " which spanning tree blocks now: ");
  }

  @Test
  void an_access_port_names_no_vlan_to_a_tree_either() throws IOException {
    String design = design("", LINK, "").replace("link: {mode: trunk}", "link: {mode: access}");
    Finding found =
        only(
            run(
                design,
                device("sw1", PER_VLAN, "GigabitEthernet1/0/48: switchport access vlan 231")
                    .replace("mode trunk", "mode access"),
                device("sw2", PER_VLAN, "GigabitEthernet1/0/48: switchport access vlan 232")
                    .replace("mode trunk", "mode access")),
            "link-native-differs");
    assertThat(found.consequence())
        .isEqualTo(
            "Untagged frames of voice-a (231) arrive in voice-b (232), and the other way round: no"
                + " spanning tree notices it, and they become one broadcast domain here. voice-a"
                + " (231) and voice-b (232)"
                + ONE
                + " voice-a (231) and voice-b (232) must stay apart.");
  }

  @Test
  void where_one_end_was_not_read_nothing_is_said() throws IOException {
    AuditOutcome outcome = run(design("", LINK, SILENT), device("sw1", MST, trunk(48, 231)));
    assertThat(outcome.findings()).extracting(Finding::rule).containsOnly("config-missing");
    assertThat(conforming(outcome)).isZero();
  }
}
