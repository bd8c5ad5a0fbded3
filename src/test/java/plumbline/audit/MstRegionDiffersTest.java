package plumbline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plumbline.finding.Finding;

/** Whole audits of MST regions (IEEE 802.1Q, MST Configuration Identifier). */
class MstRegionDiffersTest {
  @TempDir private Path scratch;

  private static final String LINE =
      """
      format: plumbline-design/1
      vlans: {x: {id: 10}, y: {id: 20}}
      roles: {switch-link: {mode: trunk}}
      switches: {a: {}, b: {}, c: {}, d: {}}
      links:
        - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
        - {ends: [b Gi1/0/2, c Gi1/0/1], role: switch-link}
        - {ends: [c Gi1/0/2, d Gi1/0/1], role: switch-link}
      """;

  private static final String GOOD = "name shops| revision 1| instance 1 vlan 10";

  private final Map<String, String> configs = new TreeMap<>();

  private void region(String name, String block) {
    device(name, "spanning-tree mode mst|spanning-tree mst configuration| " + block + "|");
  }

  private void device(String name, String lines) {
    StringBuilder text =
        new StringBuilder("hostname " + name + "\n!\nversion 15.2\n!\nvtp mode transparent\n!\n")
            .append(lines.replace('|', '\n'))
            .append("!\nvlan 10,20\n!\n");
    for (int port = 1; port <= 2; port++) {
      text.append("interface GigabitEthernet1/0/")
          .append(port)
          .append("\n switchport mode trunk\n switchport nonegotiate\n!\n");
    }
    configs.put(name, text.append("end\n").toString());
  }

  private List<Finding> findings(String design) throws IOException {
    Path site = Files.createTempDirectory(scratch, "site");
    Files.writeString(site.resolve("design.yaml"), design);
    for (Map.Entry<String, String> config : configs.entrySet()) {
      Files.writeString(site.resolve(config.getKey() + ".cfg"), config.getValue());
    }
    AuditOutcome outcome = RuleCaseRun.run(site);
    assertThat(outcome.ruleFailures()).isEmpty();
    return outcome.findings().stream()
        .filter(one -> one.rule().equals("mst-region-differs"))
        .toList();
  }

  private List<String> said(String design) throws IOException {
    return findings(design).stream()
        .map(one -> one.severity() + " " + one.switchName() + ": " + one.found())
        .toList();
  }

  @Test
  void the_few_differ_from_the_many() throws IOException {
    for (String name : List.of("a", "b", "c", "d")) {
      region(name, GOOD);
    }
    assertThat(said(LINE)).isEmpty();
    region("a", "name shop| revision 1| instance 1 vlan 10");
    assertThat(said(LINE)).containsExactly("weakens a: region shop");
    region("c", "name shops| revision 1| instance 1 vlan 10,20");
    assertThat(said(LINE))
        .containsExactly("weakens a: region shop", "weakens c: y (20) in instance 1");
    assertThat(findings(LINE).get(1).designed())
        .isEqualTo("the region of b and 1 other switch: y (20) in instance 0");
  }

  @Test
  void of_two_halves_the_one_that_the_design_names_first_is_meant() throws IOException {
    for (String name : List.of("a", "b", "c", "d")) {
      region(name, GOOD);
    }
    region("a", "name old| revision 1| instance 1 vlan 10");
    region("b", "name old| revision 1| instance 1 vlan 10");
    assertThat(said(LINE)).containsExactly("weakens c: region shops", "weakens d: region shops");
    assertThat(findings(LINE).get(1).consequence())
        .startsWith("d is in a region apart: between it and the others all VLANs follow one");
  }

  @Test
  void only_what_mst_joins_is_compared() throws IOException {
    region("a", GOOD);
    device("b", "spanning-tree mode rapid-pvst|spanning-tree mst configuration| name other|");
    region("c", "name c");
    assertThat(said(LINE)).isEmpty();
    region("d", "name d");
    assertThat(said(LINE)).containsExactly("weakens d: region d");
    configs.computeIfPresent(
        "c", (any, text) -> text.replace("1/0/2\n", "1/0/2\n no switchport\n"));
    assertThat(said(LINE.replace("{mode: trunk}", "{negotiate: false}"))).isEmpty();
  }

  @Test
  void a_table_that_is_open_is_undecided_unless_something_else_differs() throws IOException {
    region("a", GOOD);
    region("b", GOOD);
    region("c", "name shops| revision 1| instance 1 vlan 1o");
    assertThat(said(LINE)).hasSize(1).allMatch(text -> text.startsWith("unverified c: cannot"));
    region("c", "name shops| revision 2| instance 1 vlan 1o");
    assertThat(said(LINE)).containsExactly("weakens c: revision 2");
  }

  @Test
  void two_regions_that_the_design_plans_are_no_difference() throws IOException {
    String planned =
        LINE.replace(
            "{a: {}, b: {}, c: {}, d: {}}",
            "{a: {spanning-tree: {mst: NORTH}}, b: {spanning-tree: {mst: NORTH}},"
                + " c: {spanning-tree: {mst: SOUTH}}, d: {spanning-tree: {mst: SOUTH}}}");
    String design =
        planned
            .replace("NORTH", "{name: north, revision: 1, instances: {1: [x]}}")
            .replace("SOUTH", "{name: south, revision: 1, instances: {1: [x]}}");
    region("a", "name north| revision 1| instance 1 vlan 10");
    region("b", "name north| revision 1| instance 1 vlan 10,99");
    region("c", "name south| revision 1| instance 1 vlan 10");
    region("d", "name wrong| revision 1| instance 1 vlan 10");
    // d's name is told by the rule about the switch alone; the VLAN that no design names is not
    assertThat(said(design)).containsExactly("weakens b: VLAN 99 in instance 1");
  }

  @Test
  void a_config_that_was_not_read_is_compared_with_nothing() throws IOException {
    region("a", GOOD);
    assertThat(said(LINE)).isEmpty();
  }
}
