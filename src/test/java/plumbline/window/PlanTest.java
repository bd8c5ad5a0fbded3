package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import plumbline.design.Design;

class PlanTest {
  private static final String DESIGN =
      """
      vlans: {a: {id: 10}, b: {id: 20}}
      roles: {desk: {mode: access, access: a}}
      switches:
        sw1: {ports: {Gi1/0/1: desk}, spanning-tree: {mode: rapid-pvst}}
        sw2: {ports: {Gi1/0/1: desk}}
      """;

  private static Design with(String part, String other) {
    assertThat(DESIGN).contains(part);
    return Windows.design(DESIGN.replace(part, other));
  }

  @Test
  void designs_that_ask_the_same_in_other_lines_and_names_differ_nowhere() {
    assertThat(Plan.switches(Windows.design(DESIGN), Windows.design("site: Saltmarsh\n" + DESIGN)))
        .isEmpty();
  }

  @Test
  void a_switch_is_planned_to_change_where_a_role_or_its_tree_is_another() {
    assertThat(Plan.switches(Windows.design(DESIGN), with("access: a}", "access: b}")))
        .containsExactly("sw1", "sw2");
    assertThat(Plan.switches(Windows.design(DESIGN), with("rapid-pvst", "mst")))
        .containsExactly("sw1");
    assertThat(Plan.switches(with("  sw2: {ports: {Gi1/0/1: desk}}\n", ""), Windows.design(DESIGN)))
        .containsExactly("sw2");
  }
}
