package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;
import static plumbline.effective.TestSwitch.campus;
import static plumbline.effective.TestSwitch.dataCentre;
import static plumbline.effective.TestSwitch.show;
import static plumbline.effective.TestSwitch.why;

import org.junit.jupiter.api.Test;
import plumbline.effective.SpanningTree.Priority;
import plumbline.setting.Truth;
import plumbline.vlan.VlanId;

/** Tests the spanning tree of the whole switch. */
class SpanningTreeBuilderTest {
  private static final VlanId TEN = new VlanId(10);

  private static SpanningTree tree(String lines) {
    return campus(lines + "\n").tree();
  }

  @Test
  void the_mode_is_the_dialects_unless_a_line_says_so() {
    assertThat(why(tree("").mode())).isEqualTo("campus: spanning-tree mode pvst");
    assertThat(show(dataCentre("").tree().mode())).isEqualTo("rapid-pvst");
    assertThat(show(tree("spanning-tree mode mst").mode())).isEqualTo("mst");
    assertThat(show(tree("spanning-tree mode mst\nno spanning-tree mode").mode()))
        .isEqualTo("pvst");
  }

  @Test
  void root_primary_is_24576_and_kept_apart_from_a_number() {
    Priority root = tree("spanning-tree vlan 10 root primary").priorityOf(TEN);
    assertThat(show(root.value())).isEqualTo("24576");
    assertThat(root.asked()).isEqualTo(Priority.Asked.ROOT_PRIMARY);
    Priority number = tree("spanning-tree vlan 10 priority 24576").priorityOf(TEN);
    assertThat(number.asked()).isEqualTo(Priority.Asked.NUMBER);
  }

  @Test
  void root_secondary_is_28672() {
    Priority second = tree("spanning-tree vlan 10 root secondary").priorityOf(TEN);
    assertThat(show(second.value())).isEqualTo("28672");
    assertThat(second.asked()).isEqualTo(Priority.Asked.ROOT_SECONDARY);
  }

  @Test
  void without_a_line_the_priority_is_32768() {
    // RFC 4188, BRIDGE-MIB dot1dStpPriority: default 32768, in steps of 4096.
    assertThat(show(tree("").priorityOf(TEN).value())).isEqualTo("32768");
    assertThat(why(tree("").priorityOf(TEN).value())).isEqualTo("campus: bridge priority 32768");
  }

  @Test
  void the_negated_tree_turns_it_off_and_the_negated_priority_resets_it() {
    SpanningTree off = tree("no spanning-tree vlan 10,20\nspanning-tree vlan 20");
    assertThat(off.isOff(TEN)).isEqualTo(Truth.YES);
    assertThat(off.isOff(new VlanId(20))).isEqualTo(Truth.NO);
    SpanningTree reset =
        tree("spanning-tree vlan 10 priority 4096\nno spanning-tree vlan 10 priority");
    assertThat(reset.isOff(TEN)).isEqualTo(Truth.NO);
    assertThat(show(reset.priorityOf(TEN).value())).isEqualTo("32768");
  }

  @Test
  void per_vlan_lines_have_no_effect_in_mst_and_mst_lines_none_outside_it() {
    String lines =
        "\nspanning-tree vlan 10 priority 4096\nno spanning-tree vlan 20\n"
            + "spanning-tree mst 1 priority 8192";
    SpanningTree multiple = tree("spanning-tree mode mst" + lines);
    assertThat(show(multiple.priorityOf(TEN).value())).isEqualTo("32768");
    assertThat(multiple.isOff(new VlanId(20))).isEqualTo(Truth.NO);
    assertThat(show(multiple.priorityOf(1).value())).isEqualTo("8192");
    SpanningTree perVlan = tree("spanning-tree mode rapid-pvst" + lines);
    assertThat(show(perVlan.priorityOf(TEN).value())).isEqualTo("4096");
    assertThat(perVlan.isOff(new VlanId(20))).isEqualTo(Truth.YES);
    assertThat(show(perVlan.priorityOf(1).value())).isEqualTo("32768");
  }

  @Test
  void path_costs_are_short_on_campus_and_long_in_mst_or_by_line() {
    assertThat(show(tree("").longCosts())).isEqualTo("false");
    assertThat(show(tree("spanning-tree pathcost method long").longCosts())).isEqualTo("true");
    assertThat(show(tree("spanning-tree mode mst").longCosts())).isEqualTo("true");
  }

  @Test
  void the_region_has_name_revision_and_instances() {
    SpanningTree.Region region =
        tree("spanning-tree mst configuration\n name QUAY\n revision 3\n instance 1 vlan 10-20\n"
                + " instance 2 vlan 15\n instance 1 vlan 30")
            .region();
    assertThat(show(region.name())).isEqualTo("QUAY");
    assertThat(show(region.revision())).isEqualTo("3");
    assertThat(region.instances().get(1)).hasToString("10-14,16-20,30");
    assertThat(show(region.instanceOf(new VlanId(15)))).isEqualTo("2");
    assertThat(show(region.instanceOf(new VlanId(99)))).isEqualTo("0");
  }

  @Test
  void no_tree_at_all_leaves_every_vlan_without_one() {
    SpanningTree none = tree("spanning-tree mode none");
    assertThat(none.isOff(TEN)).isEqualTo(Truth.YES);
  }
}
