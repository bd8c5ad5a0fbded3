package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.finding.Finding;

/**
 * Whole audits of planned roots. The lower bridge identifier wins, priority first (IEEE 802.1Q,
 * bridge identifier); what asking for the root's place gives is in section 4 of the contract.
 */
class RootUnplannedTest {
  @TempDir private Path scratch;

  /**
   *
   *
   * <pre>
   *      a---b
   *       \ /
   *        c
   * </pre>
   */
  private static final String TRIANGLE =
      """
      format: plumbline-design/1
      vlans: {x: {id: 10}, y: {id: 20}, z: {id: 30}}
      roles: {switch-link: {mode: trunk}}
      switches:
        a: {spanning-tree: {root-of: [x, y], second-for: [z]}}
        b: {spanning-tree: {root-of: [z], second-for: [x, y]}}
        c: {}
      links:
        - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
        - {ends: [a Gi1/0/2, c Gi1/0/1], role: switch-link}
        - {ends: [b Gi1/0/2, c Gi1/0/2], role: switch-link}
      """;

  private final Map<String, String> configs = new TreeMap<>();

  private void device(String name, String lines) {
    device(name, lines, 2);
  }

  private void device(String name, String lines, int ports) {
    StringBuilder text =
        new StringBuilder("hostname " + name + "\n!\nversion 15.2\n!\nvtp mode transparent\n!\n")
            .append(lines.replace('|', '\n'))
            .append("!\nvlan 10,20,30\n!\n");
    for (int port = 1; port <= ports; port++) {
      text.append("interface GigabitEthernet1/0/")
          .append(port)
          .append("\n switchport mode trunk\n switchport nonegotiate\n!\n");
    }
    configs.put(name, text.append("end\n").toString());
  }

  private static final String RAPID = "spanning-tree mode rapid-pvst|";

  private static String rapid(String... lines) {
    return RAPID + "spanning-tree " + String.join("|spanning-tree ", lines) + "|";
  }

  private void asPlanned() {
    device("a", rapid("vlan 10,20 priority 4096", "vlan 30 priority 8192"));
    device("b", rapid("vlan 30 priority 4096", "vlan 10,20 priority 8192"));
    device("c", RAPID);
  }

  private AuditOutcome outcome(String design) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), design);
    for (Map.Entry<String, String> config : configs.entrySet()) {
      Files.writeString(site.resolve(config.getKey() + ".cfg"), config.getValue());
    }
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private List<Finding> findings(String design) throws IOException {
    return outcome(design).findings().stream()
        .filter(one -> one.rule().equals("root-unplanned"))
        .toList();
  }

  private List<String> said(String design) throws IOException {
    return findings(design).stream()
        .map(
            one ->
                one.severity()
                    + " "
                    + one.switchName()
                    + ", "
                    + one.subject()
                    + ": "
                    + one.vlans()
                    + " "
                    + one.found())
        .toList();
  }

  @Test
  void roots_and_seconds_as_planned_conform_and_are_counted() throws IOException {
    asPlanned();
    AuditOutcome outcome = outcome(TRIANGLE);
    assertThat(outcome.findings()).isEmpty();
    assertThat(outcome.checks())
        .filteredOn(count -> count.rule().equals("root-unplanned"))
        .allMatch(count -> count.conforms() == 4 && count.differs() == 0);
  }

  @Test
  void one_line_that_takes_every_root_is_one_finding_at_its_switch() throws IOException {
    asPlanned();
    device("c", rapid("vlan 1-4094 priority 0"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens c, unplanned root: 10,20,30 c is the root of x (10), y (20): its priority is"
                + " 0, that of a 4096; c is the root of z (30): its priority is 0, that of b 4096");
    assertThat(findings(TRIANGLE).get(0).evidence())
        .extracting(proof -> proof.file().orElse(""))
        .containsExactly("c.cfg", "a.cfg", "b.cfg");
  }

  @Test
  void a_planned_root_without_a_line_is_the_one_to_repair() throws IOException {
    asPlanned();
    device("a", rapid("vlan 30 priority 8192"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens a, planned root: 10,20 b is the root of x (10), y (20): its priority is 8192,"
                + " that of a 32768");
  }

  @Test
  void two_lines_at_two_switches_are_two_findings() throws IOException {
    asPlanned();
    device("a", rapid("vlan 10 priority 4096", "vlan 30 priority 8192"));
    device("c", rapid("vlan 30 priority 0"));
    assertThat(findings(TRIANGLE))
        .extracting(Finding::id)
        .containsExactly("root-unplanned/a//planned root", "root-unplanned/c//unplanned root");
  }

  @Test
  void who_takes_over_is_asked_with_the_root_gone() throws IOException {
    asPlanned();
    device("b", rapid("vlan 30 priority 4096", "vlan 10 priority 8192"));
    device("c", rapid("vlan 20 priority 28672"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens b, planned second: 20 c is the root of y (20) then: its priority is 28672,"
                + " that of b 32768");
  }

  /** The switch that took the root is told once; whether the second follows is asked without it. */
  @Test
  void who_took_the_root_does_not_count_again_as_second() throws IOException {
    asPlanned();
    device("c", rapid("vlan 10 priority 0"));
    assertThat(said(TRIANGLE)).hasSize(1);
    device("b", rapid("vlan 30 priority 4096", "vlan 20 priority 8192"));
    assertThat(said(TRIANGLE))
        .hasSize(1)
        .allMatch(text -> text.startsWith("weakens c, unplanned root: 10 "));
  }

  @Test
  void equal_priorities_are_open_unless_the_design_names_both_addresses() throws IOException {
    asPlanned();
    device("b", rapid("vlan 30 priority 4096", "vlan 10 priority 4096", "vlan 20 priority 8192"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "unverified a, planned root: none cannot be told: a and b have the same priority 4096, and"
                + " the design does not name the bridge addresses that decide");
    String addresses =
        TRIANGLE
            .replace("a: {spanning-tree: {", "a: {spanning-tree: {bridge-address: ADDR-A, ")
            .replace("b: {spanning-tree: {", "b: {spanning-tree: {bridge-address: ADDR-B, ");
    assertThat(
            said(addresses.replace("ADDR-A", "0000.5e00.5301").replace("ADDR-B", "0000.5e00.5302")))
        .isEmpty();
    assertThat(
            said(addresses.replace("ADDR-A", "0000.5e00.5302").replace("ADDR-B", "0000.5e00.5301")))
        .containsExactly(
            "weakens a, planned root: 10 b is the root of x (10): both have priority 4096, and its"
                + " bridge address is lower");
  }

  @Test
  void asking_for_the_roots_place_is_open_beside_24576_or_less_and_decided_beside_more()
      throws IOException {
    device("a", rapid("vlan 10,20 root primary", "vlan 30 root secondary"));
    device("b", rapid("vlan 10,20 root secondary", "vlan 30 root primary"));
    device("c", RAPID);
    assertThat(said(TRIANGLE)).isEmpty();
    device("c", rapid("vlan 10 priority 24576"));
    assertThat(said(TRIANGLE))
        .hasSize(2)
        .allMatch(text -> text.startsWith("unverified a,") || text.startsWith("weakens c,"))
        .anyMatch(text -> text.contains("`root primary`"))
        .anyMatch(text -> text.startsWith("weakens c, unplanned second: 10 c is the root"));
  }

  @Test
  void without_a_config_that_may_change_it_nothing_is_said_but_what_is_certain()
      throws IOException {
    asPlanned();
    configs.remove("c");
    assertThat(said(TRIANGLE)).isEmpty();
    device("b", rapid("vlan 10 priority 0", "vlan 20 priority 8192", "vlan 30 priority 4096"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens a, planned root: 10 b comes before a in x (10): its priority is 0, that of a"
                + " 4096");
    configs.remove("a");
    assertThat(said(TRIANGLE)).isEmpty();
  }

  @Test
  void a_text_that_leaves_the_priority_open_is_told_at_the_planned_switch() throws IOException {
    asPlanned();
    device("c", rapid("vlan 10 priority 4o96"));
    assertThat(said(TRIANGLE))
        .isNotEmpty()
        .allMatch(text -> text.startsWith("unverified "))
        .anyMatch(text -> text.contains("the bridge priority of c is open: line"));
  }

  /** One cause, one finding: the mode, not what its lines do not do for want of it. */
  @Test
  void a_wrong_kind_of_mode_is_told_as_the_mode_alone() throws IOException {
    asPlanned();
    device("a", "spanning-tree mode mst|spanning-tree vlan 10,20 priority 4096|");
    String modes = TRIANGLE.replaceAll("spanning-tree: \\{", "spanning-tree: {mode: rapid-pvst, ");
    assertThat(outcome(modes).findings())
        .extracting(Finding::rule)
        .containsExactly("spanning-tree-mode-differs");
  }

  @Test
  void a_tree_that_is_off_is_told_as_that_alone() throws IOException {
    asPlanned();
    device(
        "a",
        rapid("vlan 10,20 priority 4096", "vlan 30 priority 8192") + "no spanning-tree vlan 10|");
    assertThat(said(TRIANGLE)).isEmpty();
    assertThat(outcome(TRIANGLE).findings())
        .extracting(Finding::rule)
        .containsExactly("spanning-tree-off");
  }

  @Test
  void a_planned_root_that_no_link_carries_the_vlan_to_is_said_to_be_apart() throws IOException {
    asPlanned();
    configs.computeIfPresent(
        "a",
        (any, text) ->
            text.replace(
                " switchport nonegotiate\n",
                " switchport nonegotiate\n switchport trunk allowed vlan 20,30\n"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens a, planned root of x: 10 no link of a carries x (10); its root is b");
  }

  /** A root guard towards a planned root has its own finding; elsewhere it cuts the VLAN off. */
  @Test
  void a_root_guard_towards_the_root_is_told_as_the_guard_alone() throws IOException {
    asPlanned();
    configs.computeIfPresent(
        "c",
        (any, text) ->
            text.replace(
                " switchport nonegotiate\n",
                " switchport nonegotiate\n spanning-tree guard root\n"));
    assertThat(outcome(TRIANGLE).findings())
        .extracting(Finding::rule)
        .containsOnly("guard-on-switch-link");
  }

  /** Example A of facts.md (an open textbook's figure): bridges 1 to 7 with equal priorities. */
  @Test
  void the_lowest_bridge_of_example_a_is_its_root_and_the_next_its_second() throws IOException {
    String[] links = {"1-2", "1-4", "1-5", "1-6", "1-7", "2-3", "3-5", "4-6", "5-7"};
    int[] used = new int[8];
    List<String> lines = new ArrayList<>();
    for (String link : links) {
      int one = link.charAt(0) - '0';
      int other = link.charAt(2) - '0';
      lines.add(
          String.format(
              "  - {ends: [s%d Gi1/0/%d, s%d Gi1/0/%d], role: l}",
              one, ++used[one], other, ++used[other]));
    }
    for (int id = 1; id <= 7; id++) {
      device("s" + id, RAPID, used[id]);
    }
    for (String[] plan : new String[][] {{"1", "2"}, {"2", "3"}, {"5", "1"}}) {
      StringBuilder switches = new StringBuilder();
      for (int id = 1; id <= 7; id++) {
        String name = Integer.toString(id);
        String roots = name.equals(plan[0]) ? ", root-of: [x]" : "";
        String seconds = name.equals(plan[1]) ? ", second-for: [x]" : "";
        switches.append(
            "  s%d: {spanning-tree: {bridge-address: \"00:00:5e:00:53:0%d\"%s%s}}\n"
                .formatted(id, id, roots, seconds));
      }
      List<String> said =
          said(
              "format: plumbline-design/1\nvlans: {x: {id: 10}}\nroles: {l: {mode: trunk}}\n"
                  + "switches:\n"
                  + switches
                  + "links:\n"
                  + String.join("\n", lines)
                  + "\n");
      if (plan[0].equals("1")) {
        assertThat(said).isEmpty();
      } else {
        assertThat(said.get(0))
            .contains(
                "s"
                    + plan[0]
                    + ", planned root: 10 s1 is the root of x (10): both have priority"
                    + " 32768, and its bridge address is lower");
        assertThat(said).hasSize(1);
      }
    }
  }

  private static String mst(String priorities) {
    return "spanning-tree mode mst|"
        + priorities
        + "spanning-tree mst configuration| name shops| instance 1 vlan 10,20| instance 2 vlan"
        + " 30|!|";
  }

  @Test
  void in_mst_every_instance_is_one_finding() throws IOException {
    device("a", mst("spanning-tree mst 1 priority 4096|spanning-tree mst 2 priority 8192|"));
    device("b", mst("spanning-tree mst 2 priority 4096|spanning-tree mst 1 priority 8192|"));
    device("c", mst("spanning-tree mst 0-2 priority 0|spanning-tree vlan 1-4094 priority 0|"));
    assertThat(said(TRIANGLE))
        .containsExactly(
            "weakens c, unplanned root of instance 1: 10,20 c is the root of x (10), y (20): its"
                + " priority is 0, that of a 4096",
            "weakens c, unplanned root of instance 2: 30 c is the root of z (30): its priority is"
                + " 0, that of b 4096");
    device("c", mst("spanning-tree vlan 1-4094 priority 0|"));
    assertThat(said(TRIANGLE)).isEmpty();
  }

  /** Who is in another region cannot take an instance's root: the region is what is told. */
  @Test
  void a_switch_of_another_region_is_told_as_that_alone() throws IOException {
    device("a", mst("spanning-tree mst 1 priority 4096|spanning-tree mst 2 priority 8192|"));
    device("b", mst("spanning-tree mst 2 priority 4096|spanning-tree mst 1 priority 8192|"));
    device("c", mst("spanning-tree mst 1-2 priority 0|").replace("name shops", "name shop"));
    assertThat(outcome(TRIANGLE).findings())
        .extracting(Finding::id)
        .containsExactly("mst-region-differs/c//");
  }

  @Test
  void a_silent_rule_says_nothing() throws IOException {
    asPlanned();
    device("c", rapid("vlan 1-4094 priority 0"));
    assertThat(said(TRIANGLE + "rules: {silent: [root-unplanned]}\n")).isEmpty();
    assertThat(Set.copyOf(said(TRIANGLE))).hasSize(1);
  }
}
