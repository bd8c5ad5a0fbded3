package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import plumbline.finding.Finding;

/**
 * Whole audits of the spanning tree of a switch against its design (sections 4 to 6 of the product
 * contract; a region is one name, one revision and one table: IEEE 802.1Q, MST Configuration
 * Identifier).
 */
class SwitchTreeTest {
  private static final String DESIGN =
      """
      format: plumbline-design/1
      vlans: {office: {id: 250}, voice: {id: 231}}
      roles: {desk: {mode: access, access: office}}
      switches:
        sw1: {spanning-tree: TREE, ports: {Gi1/0/1: desk}}
      """;
  private static final String PORT =
      "interface GigabitEthernet1/0/1\n switchport access vlan 250\n switchport mode access\n";
  private static final String MST =
      "{mode: mst, mst: {name: ferries, revision: 4, instances: {1: [office]}}}";

  private static AuditOutcome run(String tree, String lines) {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN.replace("TREE", tree),
            "hostname sw1\n!\nvtp mode transparent\n!\n"
                + lines.replace('|', '\n')
                + "!\nvlan 231,250\n!\n"
                + PORT
                + "!\nend\n");
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome;
  }

  private static List<String> ids(AuditOutcome outcome) {
    return outcome.findings().stream().map(one -> one.severity() + " " + one.id()).toList();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          "{mode: pvst}", "", ""
          "{mode: pvst}", "spanning-tree mode rapid-pvst|", "mode"
          "{mode: rapid-pvst}", "", "mode"
          "{mode: rapid-pvst, path-cost: short}", "spanning-tree mode rapid-pvst|", ""
          "{mode: rapid-pvst, path-cost: long}", "spanning-tree mode rapid-pvst|", "path-cost"
          "{mode: rapid-pvst, path-cost: short}", "spanning-tree mode mst|", "mode"
          "{mode: rapid-pvst, path-cost: short}", "spanning-tree mode pvst|spanning-tree pathcost method long|", "mode, path-cost"
          "{mode: mst, path-cost: long}", "spanning-tree mode mst|", ""
          """)
  void mode_and_costs_are_compared_and_costs_that_follow_a_wrong_mode_are_not(
      String tree, String lines, String subjects) {
    AuditOutcome outcome = run(tree, lines);
    assertThat(ids(outcome))
        .allMatch(id -> id.startsWith("weakens spanning-tree-mode-differs/sw1//"));
    assertThat(String.join(", ", outcome.findings().stream().map(Finding::subject).toList()))
        .isEqualTo(subjects);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          "name ferries| revision 4| instance 1 vlan 250", ""
          "name ferries| revision 4| instance 1 vlan 240-260", ""
          "name Ferries| revision 4| instance 1 vlan 250", "region Ferries"
          "revision 4| instance 1 vlan 250", "no region name"
          "name ferries| instance 1 vlan 250", "revision 0"
          "name ferries| revision 4", "office (250) in instance 0"
          "name ferries| revision 4| instance 2 vlan 250", "office (250) in instance 2"
          "name ferries| revision 4| instance 1 vlan 231,250", "voice (231) in instance 1"
          "name ferries| revision 3| instance 1 vlan 231", "revision 3, office (250) in instance 0 and voice (231) in instance 1"
          """)
  void a_region_is_its_name_its_revision_and_its_table(String block, String found) {
    AuditOutcome outcome =
        run(MST, "spanning-tree mode mst|spanning-tree mst configuration| " + block + "|");
    assertThat(String.join("; ", outcome.findings().stream().map(Finding::found).toList()))
        .isEqualTo(found);
  }

  @Test
  void a_region_outside_mst_is_told_with_the_mode() {
    assertThat(ids(run(MST, "spanning-tree mode rapid-pvst|")))
        .containsExactly("weakens spanning-tree-mode-differs/sw1//mode");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      textBlock =
          """
          "spanning-tree mode rapid-pvst|no spanning-tree vlan 250|", "weakens spanning-tree-off/sw1//"
          "spanning-tree mode rapid-pvst|no spanning-tree vlan 1-4094|spanning-tree vlan 250|", ""
          "spanning-tree mode rapid-pvst|no spanning-tree vlan 231|", ""
          "spanning-tree mode none|", "weakens spanning-tree-off/sw1//"
          """)
  void a_tree_that_is_off_counts_where_a_covered_port_carries_the_vlan(
      String lines, String expected) {
    assertThat(String.join(", ", ids(run("{mode: rapid-pvst}", lines)))).isEqualTo(expected);
  }

  @Test
  void per_vlan_lines_have_no_effect_in_mst() {
    assertThat(ids(run("{mode: mst}", "spanning-tree mode mst|no spanning-tree vlan 250|")))
        .isEmpty();
  }

  @Test
  void without_a_port_that_carries_anything_no_tree_is_a_wrong_mode() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN.replace("TREE", "{mode: rapid-pvst}"),
            "hostname sw1\n!\nvtp mode transparent\n!\nspanning-tree mode none\n!\nvlan 250\n!\n"
                + PORT
                + " shutdown\n!\nend\n");
    assertThat(ids(outcome))
        .containsExactly(
            "weakens spanning-tree-mode-differs/sw1//mode",
            "breaks port-shut/sw1/GigabitEthernet1/0/1/desk");
  }

  @Test
  void in_a_script_an_absent_line_leaves_mode_and_trees_open() {
    AuditOutcome outcome =
        RuleCaseRun.run(
            DESIGN.replace("TREE", MST),
            """
            conf t
            hostname sw1
            interface GigabitEthernet1/0/1
            switchport mode access
            switchport access vlan 250
            no shutdown
            end
            wr
            """);
    assertThat(ids(outcome))
        .contains(
            "unverified spanning-tree-mode-differs/sw1//", "unverified spanning-tree-off/sw1//");
  }

  @Test
  void other_dialects_have_other_defaults() {
    String leaf =
        "hostname sw1\nvlan 231,250\ninterface Ethernet1\n   switchport access vlan 250\n"
            + "interface Ethernet2\nend\n";
    String design = DESIGN.replace("Gi1/0/1", "Ethernet1");
    assertThat(
            RuleCaseRun.run(
                    design
                        .replace("TREE", "{mode: mst, path-cost: long}")
                        .replace("sw1: {", "sw1: {dialect: leaf-spine, "),
                    leaf)
                .findings())
        .filteredOn(one -> one.rule().startsWith("spanning-tree"))
        .isEmpty();
  }
}
