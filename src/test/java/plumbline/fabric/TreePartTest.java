package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import plumbline.vlan.VlanId;

/** What is told of a tree of which not all is known, and what root guards and regions do to it. */
class TreePartTest {
  private static final Failure NOTHING = new Failure.None();
  private static final VlanId SHOP = new VlanId(10);
  private static final TreeScope TREE = TreeScope.of(SHOP);

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
      switches: {a: {}, b: {}, c: {}}
      links:
        - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
        - {ends: [a Gi1/0/2, c Gi1/0/1], role: switch-link}
        - {ends: [b Gi1/0/2, c Gi1/0/2], role: switch-link}
      """;

  private final Map<String, String> configs = new TreeMap<>();

  private void device(String name, String lines, String first, String second) {
    configs.put(
        name,
        lines.replace('|', '\n')
            + "vlan 10\n!\ninterface GigabitEthernet1/0/1\n switchport mode trunk\n"
            + first
            + "!\ninterface GigabitEthernet1/0/2\n switchport mode trunk\n"
            + second
            + "!\n");
  }

  private void device(String name, String lines) {
    device(name, lines, "", "");
  }

  private static String rapid(int priority) {
    return "spanning-tree mode rapid-pvst|spanning-tree vlan 10 priority " + priority + "|";
  }

  private TreePart part(TreeScope scope) {
    List<TreePart> parts = parts(scope);
    assertThat(parts).hasSize(1);
    return parts.get(0);
  }

  private List<TreePart> parts(TreeScope scope) {
    return Sites.fabric(TRIANGLE, configs).tree(scope, NOTHING);
  }

  /** A priority of 32768 in VLAN 10 shows as 32778, 0x800A (facts.md, section 3). */
  @Test
  void the_vlan_is_added_to_the_priority() {
    assertThat(TREE.id(32768, OptionalLong.empty()).priority()).isEqualTo(32778).isEqualTo(0x800A);
    assertThat(new TreeScope(SHOP, OptionalInt.of(3)).id(0, OptionalLong.empty()).priority())
        .isEqualTo(3);
  }

  @Test
  void who_comes_before_a_switch_is_told_though_a_third_was_not_read() {
    device("a", rapid(8192));
    device("b", rapid(4096));
    TreePart part = part(TREE);
    assertThat(part.isRead()).isFalse();
    assertThat(part.root()).isEmpty();
    assertThat(part.ahead("a")).containsExactly("b");
    assertThat(part.ahead("b")).isEmpty();
    assertThat(part.ahead("c")).isEmpty();
  }

  @Test
  void nothing_is_told_across_a_switch_that_was_not_read() {
    device("a", rapid(8192), "", " shutdown\n");
    device("c", rapid(4096));
    assertThat(part(TREE).ahead("a")).isEmpty();
    device("a", rapid(8192));
    assertThat(part(TREE).ahead("a")).containsExactly("c");
  }

  /** Section 4 of the product contract: 24576, or 4096 below a lower root seen then. */
  @Test
  void who_asked_for_the_roots_place_is_before_all_that_stand_above_24576_and_open_to_the_rest() {
    device("a", "spanning-tree mode rapid-pvst|spanning-tree vlan 10 root primary|");
    device("b", rapid(28672));
    device("c", rapid(8192));
    TreePart part = part(TREE);
    assertThat(part.doubt().orElseThrow()).contains("`root primary`");
    assertThat(part.ahead("b")).containsExactly("c", "a");
    assertThat(part.ahead("a")).isEmpty();
    assertThat(part.ahead("c")).isEmpty();
    assertThat(part.unbeaten("a")).containsExactly("c");
  }

  @Test
  void a_root_guard_that_hears_the_root_leaves_the_tree_open_and_says_where() {
    device("a", rapid(4096));
    device("b", rapid(8192), "", " spanning-tree guard root\n");
    device("c", rapid(0), "", "");
    TreePart part = part(TREE);
    assertThat(part.root()).isEmpty();
    assertThat(part.doubt())
        .contains("a root guard at b GigabitEthernet1/0/2 may keep the root out");
    assertThat(part.barring()).extracting(port -> port.switchName()).containsExactly("b");
    assertThat(part.ahead("a")).containsExactly("c");
  }

  @Test
  void a_root_guard_that_hears_nothing_better_changes_nothing() {
    device("a", rapid(4096), " spanning-tree guard root\n", " spanning-tree guard root\n");
    device("b", rapid(8192), "", " spanning-tree guard root\n");
    device("c", rapid(32768));
    TreePart part = part(TREE);
    assertThat(part.root()).contains("a");
    assertThat(part.roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
  }

  @Test
  void a_root_guard_towards_a_leaf_acts_never_whatever_the_costs_are() {
    String line = TRIANGLE.replace("  - {ends: [a Gi1/0/2, c Gi1/0/1], role: switch-link}\n", "");
    device("a", rapid(4096));
    device("b", rapid(8192), "", " spanning-tree guard root\n speed auto\n");
    device("c", rapid(32768));
    assertThat(Sites.fabric(line, configs).tree(TREE, NOTHING).get(0).root()).contains("a");
  }

  @Test
  void between_kinds_of_trees_the_root_is_open_but_not_who_comes_before_on_one_side() {
    device("a", rapid(8192));
    device("b", rapid(4096));
    device("c", "spanning-tree mode mst|");
    TreePart part = part(TREE);
    assertThat(part.doubt().orElseThrow()).contains("whether the tree runs over the link a - c");
    assertThat(part.ahead("a")).containsExactly("b");
    assertThat(part.ahead("c")).isEmpty();
  }

  /** A shared bundle is one port of a pair, so nothing is told of roles, but the root is. */
  @Test
  void a_bundle_that_ends_on_two_switches_hides_the_roles_and_not_the_root() {
    String pair =
        """
        format: plumbline-design/1
        vlans: {shop: {id: 10}}
        roles: {switch-link: {mode: trunk}}
        switches: {a: {}, b: {}, c: {}}
        links:
          - {ends: [a Gi1/0/1, b Gi1/0/1], role: switch-link}
          - {ends: [a Po1, c Po1], role: switch-link, members: [[Gi1/0/2, Gi1/0/1]]}
          - {ends: [b Po1, c Po1], role: switch-link, members: [[Gi1/0/2, Gi1/0/2]]}
        multi-chassis: [{switches: [a, b], peer-link: Gi1/0/1}]
        """;
    String member = " channel-group 1 mode active\n";
    String bundle =
        "interface Port-channel1\n switchport mode trunk\n spanning-tree guard root\n!\n";
    device("a", rapid(4096), "", member);
    device("b", rapid(8192), "", member);
    device("c", rapid(32768), member, member);
    configs.replaceAll((name, text) -> name.equals("c") ? text : text + bundle);
    TreePart part = Sites.fabric(pair, configs).tree(TREE, NOTHING).get(0);
    assertThat(part.doubt()).isEmpty();
    assertThat(part.root()).contains("a");
    assertThat(part.roles()).isEmpty();
  }

  private static String mst(int revision, String priorities) {
    return "spanning-tree mode mst|"
        + priorities
        + "spanning-tree mst configuration| name shops| revision "
        + revision
        + "| instance 1 vlan 10|!|";
  }

  /** IEEE 802.1Q: between regions only the common tree goes on, which is instance 0 in each. */
  @Test
  void an_instance_ends_where_its_region_does_and_the_common_tree_does_not() {
    device("a", mst(1, "spanning-tree mst 0-1 priority 8192|"));
    device("b", mst(1, ""));
    device("c", mst(2, "spanning-tree mst 0-1 priority 4096|"));
    List<TreePart> instance = parts(new TreeScope(SHOP, OptionalInt.of(1)));
    assertThat(instance)
        .extracting(TreePart::switches)
        .containsExactly(List.of("a", "b"), List.of("c"));
    assertThat(instance.get(0).root()).contains("a");
    assertThat(instance.get(0).roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ROOT);
    TreePart common = part(new TreeScope(SHOP, OptionalInt.of(0)));
    assertThat(common.root()).contains("c");
    assertThat(common.roles()).isEmpty();
  }

  @Test
  void a_region_that_is_open_leaves_the_instance_open() {
    device("a", mst(1, "spanning-tree mst 0-1 priority 4096|"));
    device("b", mst(1, ""));
    device("c", mst(1, "").replace("vlan 10", "vlan 10,x"));
    TreePart part = part(new TreeScope(SHOP, OptionalInt.of(1)));
    assertThat(part.doubt().orElseThrow()).contains("whether the tree runs over the link a - c");
    assertThat(part.ahead("b")).containsExactly("a");
  }

  @Test
  void the_tree_that_another_root_would_give_can_be_asked_for() {
    device("a", rapid(4096));
    device("b", rapid(8192));
    device("c", rapid(32768));
    TreePart part = part(TREE);
    assertThat(part.roles(2)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    TreePart other = part.withRoot("c");
    assertThat(other.root()).contains("c");
    assertThat(other.roles(0)).containsExactly(PortRole.DESIGNATED, PortRole.ALTERNATE);
    assertThat(other.roles(2)).containsExactly(PortRole.ROOT, PortRole.DESIGNATED);
  }
}
