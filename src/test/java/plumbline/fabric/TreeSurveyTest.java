package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plumbline.vlan.VlanId;

/** Trees out of the configs of three switches in a triangle. */
class TreeSurveyTest {
  private static final Failure NOTHING = new Failure.None();
  private static final VlanId SHOP = new VlanId(10);

  /**
   *
   *
   * <pre>
   *        a
   *      0/ \1      link numbers
   *      b---c
   *        2
   * </pre>
   */
  private static final String TRIANGLE =
      """
      format: plumbline-design/1
      vlans: {shop: {id: 10}}
      roles: {switch-link: {mode: trunk}}
      switches:
        a: {spanning-tree: {bridge-address: "00:00:5e:00:53:0a"}}
        b: {spanning-tree: {bridge-address: "00:00:5e:00:53:0b"}}
        c: {spanning-tree: {bridge-address: "00:00:5e:00:53:0c"}}
      links:
        - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
        - {ends: [a Gi1/0/2, c Gi1/0/1], role: switch-link}
        - {ends: [b Gi1/0/2, c Gi1/0/2], role: switch-link}
      """;

  private final Map<String, String> configs = new TreeMap<>();

  TreeSurveyTest() {
    for (String name : List.of("a", "b", "c")) {
      configs.put(
          name,
          "spanning-tree mode rapid-pvst\nspanning-tree pathcost method short\nvlan 10\n!\n"
              + "interface GigabitEthernet1/0/1\n switchport mode trunk\n!\n"
              + "interface GigabitEthernet1/0/2\n switchport mode trunk\n!\n");
    }
  }

  private void line(String name, String line) {
    configs.merge(name, "", (text, any) -> line + "\n" + text);
  }

  private void onPort(String name, String port, String line) {
    String header = "interface GigabitEthernet" + port + "\n";
    configs.computeIfPresent(name, (any, text) -> text.replace(header, header + " " + line + "\n"));
  }

  private List<TreePart> tree(String design, TreeScope scope, Failure failure) {
    return Sites.fabric(design, configs).tree(scope, failure);
  }

  private TreePart tree() {
    List<TreePart> parts = tree(TRIANGLE, TreeScope.of(SHOP), NOTHING);
    assertThat(parts).hasSize(1);
    return parts.get(0);
  }

  @Test
  void the_lowest_priority_is_the_root_and_the_far_link_is_blocked_at_the_higher_bridge() {
    line("a", "spanning-tree vlan 10 priority 4096");
    TreePart tree = tree();
    assertThat(tree.root()).contains("a");
    assertThat(tree.roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    assertThat(tree.roles(1)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    assertThat(tree.roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
  }

  @Test
  void a_configured_cost_moves_the_blocked_end() {
    line("a", "spanning-tree vlan 10 priority 4096");
    onPort("b", "1/0/1", "spanning-tree cost 50");
    assertThat(tree().roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    assertThat(tree().roles(2)).containsExactly(PortRole.ROOT, PortRole.DESIGNATED);
  }

  /** Common practice, no source: a line about the VLAN outweighs one about the port. */
  @Test
  void a_cost_of_the_vlan_moves_the_blocked_end_in_its_tree_alone() {
    line("a", "spanning-tree vlan 10,20 priority 4096");
    onPort("b", "1/0/1", "spanning-tree vlan 10 cost 50");
    assertThat(tree().roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    configs.replaceAll((name, text) -> text.replace("vlan 10\n!", "vlan 10,20\n!"));
    TreePart other = tree(TRIANGLE, TreeScope.of(new VlanId(20)), NOTHING).get(0);
    assertThat(other.roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    onPort("b", "1/0/1", "spanning-tree cost 4");
    assertThat(tree().roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    onPort("b", "1/0/1", "spanning-tree mst 0 cost 1");
    assertThat(tree().roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
  }

  @Test
  void a_cost_of_an_instance_moves_the_blocked_end_in_its_tree_alone() {
    configs.replaceAll((name, text) -> text.replace("mode rapid-pvst", "mode mst"));
    line("a", "spanning-tree mst 0-1 priority 4096");
    onPort("b", "1/0/1", "spanning-tree vlan 10 cost 1");
    onPort("b", "1/0/1", "spanning-tree mst 1 cost 50000");
    TreeScope touched = new TreeScope(SHOP, OptionalInt.of(1));
    assertThat(tree(TRIANGLE, touched, NOTHING).get(0).roles(0))
        .containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    TreeScope other = new TreeScope(SHOP, OptionalInt.of(0));
    assertThat(tree(TRIANGLE, other, NOTHING).get(0).roles(0))
        .containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
  }

  @Test
  void a_port_priority_of_the_vlan_at_the_near_bridge_picks_between_two_links() {
    String doubled =
        TRIANGLE
            .replace("[a Gi1/0/2, c Gi1/0/1]", "[a Gi1/0/2, b Gi1/0/2]")
            .replace("[b Gi1/0/2, c Gi1/0/2]", "[a Gi1/0/3, c Gi1/0/1]");
    configs.computeIfPresent(
        "a", (any, text) -> text + "interface GigabitEthernet1/0/3\n switchport mode trunk\n!\n");
    line("a", "spanning-tree vlan 10 priority 4096");
    TreeScope shop = TreeScope.of(SHOP);
    assertThat(tree(doubled, shop, NOTHING).get(0).roles(1))
        .containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    onPort("a", "1/0/2", "spanning-tree vlan 10 port-priority 64");
    assertThat(tree(doubled, shop, NOTHING).get(0).roles(1))
        .containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
  }

  @Test
  void equal_priorities_are_decided_by_the_addresses_of_the_design() {
    assertThat(tree().root()).contains("a");
    String without = TRIANGLE.replaceAll("\\{spanning-tree: .*}}", "{}");
    TreePart open = tree(without, TreeScope.of(SHOP), NOTHING).get(0);
    assertThat(open.root()).isEmpty();
    assertThat(open.rootCandidates()).containsExactly("a", "b", "c");
    assertThat(open.roles(2)).containsExactly(PortRole.UNDECIDED, PortRole.UNDECIDED);
  }

  @Test
  void after_a_failure_the_blocked_link_takes_over() {
    line("a", "spanning-tree vlan 10 priority 4096");
    TreePart tree = tree(TRIANGLE, TreeScope.of(SHOP), new Failure.OfLink(1)).get(0);
    assertThat(tree.roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    line("b", "spanning-tree vlan 10 priority 8192");
    Failure root = new Failure.OfSwitch("a", OptionalInt.empty());
    assertThat(tree(TRIANGLE, TreeScope.of(SHOP), root).get(0).root()).contains("b");
  }

  @Test
  void a_link_that_lacks_the_vlan_is_no_part_of_its_tree_but_of_an_instance() {
    line("a", "spanning-tree vlan 10 priority 4096");
    onPort("c", "1/0/1", "switchport trunk allowed vlan 1");
    assertThat(tree().roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    configs.replaceAll((name, text) -> text.replace("mode rapid-pvst", "mode mst"));
    line("a", "spanning-tree mst 0 priority 4096");
    TreeScope instance = new TreeScope(SHOP, OptionalInt.of(0));
    TreePart tree = tree(TRIANGLE, instance, NOTHING).get(0);
    assertThat(tree.root()).contains("a");
    assertThat(tree.roles(1)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
  }

  @Test
  void what_the_texts_leave_open_is_said() {
    line("a", "spanning-tree vlan 10 root primary");
    line("b", "spanning-tree vlan 10 priority 8192");
    assertThat(tree().doubt().orElseThrow())
        .startsWith("a asks for the root's place by `root primary`");
    configs.remove("c");
    assertThat(tree().doubt()).contains("no config of c was read");
  }

  @Test
  void two_families_of_trees_are_not_told_together() {
    configs.computeIfPresent("b", (any, text) -> text.replace("mode rapid-pvst", "mode mst"));
    assertThat(tree().doubt().orElseThrow()).contains("whether the tree runs over the link a - b");
  }

  @Test
  void a_tree_that_is_off_is_said() {
    line("c", "no spanning-tree vlan 10");
    assertThat(tree().doubt()).contains("c has no spanning tree there, or may have none");
  }

  /** A bundle of two 1 Gb/s cables costs between 2 and 4 in 16 bits, whatever the release. */
  @Test
  void a_cost_without_a_published_value_is_tried_in_every_way() {
    String bundled =
        TRIANGLE.replace(
            "{ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}",
            "{ends: [a Po1, b Po1], role: switch-link,"
                + " members: [[Gi1/0/1, Gi1/0/1], [Gi1/0/3, Gi1/0/3]]}");
    line("a", "spanning-tree vlan 10 priority 4096");
    for (String name : List.of("a", "b")) {
      configs.computeIfPresent(
          name,
          (any, text) ->
              text.replace(
                      "interface GigabitEthernet1/0/1\n switchport mode trunk\n",
                      "interface GigabitEthernet1/0/1\n channel-group 1 mode active\n")
                  + "interface GigabitEthernet1/0/3\n channel-group 1 mode active\n!\n"
                  + "interface Port-channel1\n switchport mode trunk\n!\n");
    }
    TreePart tree = tree(bundled, TreeScope.of(SHOP), NOTHING).get(0);
    assertThat(tree.root()).contains("a");
    assertThat(tree.roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    // b is as near as c, or nearer: the end at c is blocked in each reading
    assertThat(tree.roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    onPort("c", "1/0/1", "spanning-tree cost 3");
    assertThat(tree(bundled, TreeScope.of(SHOP), NOTHING).get(0).roles(2))
        .containsExactly(PortRole.UNDECIDED, PortRole.UNDECIDED);
  }
}
