package plumbline.effective;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import plumbline.setting.Evidence;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.ListChange;
import plumbline.statement.Meaning;
import plumbline.statement.PortCommand.Allowed;
import plumbline.statement.Statement;
import plumbline.vlan.VlanSet;

/** Tests the list algebra of trunks, against a plain bit set over 1 to 4094. */
class AllowedListTest {
  private static final int MAX = 4094;

  /** One line of the list: how it changes, with which operand, in which form. */
  record Step(Form form, ListChange change, VlanSet operand) {}

  private static AllowedList read(List<Step> steps) {
    List<Statement> statements = new ArrayList<>();
    for (Step step : steps) {
      int line = statements.size() + 2;
      statements.add(
          new Statement(
              new Meaning(
                  step.form(), new Allowed(step.change(), step.operand(), false), "line " + line),
              Context.PORT,
              line,
              line,
              1));
    }
    return AllowedList.of(
        new Lines(
            statements,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty()),
        Dialect.CAMPUS);
  }

  private static Step set(ListChange change, VlanSet operand) {
    return new Step(Form.SET, change, operand);
  }

  @Provide
  Arbitrary<List<Step>> steps() {
    Arbitrary<VlanSet> operands =
        Arbitraries.integers()
            .between(1, MAX)
            .list()
            .ofMinSize(1)
            .ofMaxSize(6)
            .map(
                ends -> {
                  VlanSet set = VlanSet.NONE;
                  for (int end : ends) {
                    set = set.plus(VlanSet.ofRange(end, Math.min(MAX, end + ends.size() * 40)));
                  }
                  return set;
                });
    return Combinators.combine(
            Arbitraries.frequency(
                net.jqwik.api.Tuple.of(8, Form.SET),
                net.jqwik.api.Tuple.of(1, Form.NO),
                net.jqwik.api.Tuple.of(1, Form.DEFAULT)),
            Arbitraries.of(ListChange.values()),
            operands)
        .as(Step::new)
        .list()
        .ofMaxSize(8);
  }

  /** A list whose base is in the text, replayed bit by bit. */
  private static BitSet replay(BitSet start, List<Step> steps) {
    BitSet set = (BitSet) start.clone();
    for (Step step : steps) {
      if (step.form() != Form.SET) {
        set.set(1, MAX + 1);
        continue;
      }
      for (int id = 1; id <= MAX; id++) {
        boolean named = step.operand().contains(id);
        switch (step.change()) {
          case SET -> set.set(id, named);
          case ADD -> set.set(id, set.get(id) || named);
          case REMOVE -> set.set(id, set.get(id) && !named);
          case EXCEPT -> set.set(id, !named);
          case ALL -> set.set(id);
          case NONE -> set.clear(id);
        }
      }
    }
    return set;
  }

  private static BitSet bits(VlanSet set) {
    BitSet bits = new BitSet();
    set.ids().forEach(bits::set);
    return bits;
  }

  @Property(tries = 200)
  void the_list_lies_between_what_an_empty_and_a_full_base_would_give(
      @ForAll("steps") List<Step> steps) {
    AllowedList list = read(steps);
    BitSet full = new BitSet();
    full.set(1, MAX + 1);
    // Without any line the base is the default, all; a change of an unseen list may start anywhere.
    BitSet lowest = steps.isEmpty() ? full : replay(new BitSet(), steps);
    assertThat(bits(list.certain())).isEqualTo(lowest);
    assertThat(bits(list.possible())).isEqualTo(replay(full, steps));
  }

  @Property(tries = 200)
  void a_list_that_stands_is_changed_exactly(@ForAll("steps") List<Step> steps) {
    List<Step> all = new ArrayList<>(steps);
    all.add(0, set(ListChange.SET, VlanSet.of(1, 10, 4094)));
    AllowedList list = read(all);
    assertThat(list.setting().value().map(AllowedListTest::bits))
        .contains(replay(new BitSet(), all));
  }

  @Test
  void no_line_allows_all() {
    AllowedList list = read(List.of());
    assertThat(list.setting().value()).contains(VlanSet.ALL);
    assertThat(list.evidence()).containsExactly(new Evidence.Default("campus: all VLANs allowed"));
  }

  @Test
  void the_negated_line_means_all_and_not_none() {
    AllowedList list =
        read(
            List.of(
                set(ListChange.SET, VlanSet.of(10)),
                new Step(Form.NO, ListChange.SET, VlanSet.NONE)));
    assertThat(list.setting().value()).contains(VlanSet.ALL);
    assertThat(list.evidence().get(0)).isEqualTo(new Evidence.Line(3, "line 3"));
  }

  @Test
  void an_addition_without_a_list_before_it_is_undecided_and_surely_allows_its_operand() {
    AllowedList list = read(List.of(set(ListChange.ADD, VlanSet.of(41, 42))));
    assertThat(list.certain()).hasToString("41-42");
    assertThat(list.possible()).isEqualTo(VlanSet.ALL);
    assertThat(list.setting().reason())
        .contains("the list is changed by `add` or `remove` and its base is not in this text");
  }

  @Test
  void a_removal_without_a_list_before_it_is_undecided_and_surely_forbids_its_operand() {
    AllowedList list = read(List.of(set(ListChange.REMOVE, VlanSet.of(1))));
    assertThat(list.certain()).isEqualTo(VlanSet.NONE);
    assertThat(list.possible()).hasToString("2-4094");
    assertThat(list.setting().isDecided()).isFalse();
  }

  @Test
  void a_list_in_the_standard_syntax_has_594_members() {
    // IEEE 802.1Q YANG ieee802-dot1q-types, typedef vid-range-type: its example list, counted.
    VlanSet example = VlanSet.parse("1,10-100,250,500-1000").orElseThrow();
    assertThat(read(List.of(set(ListChange.SET, example))).certain().size()).isEqualTo(594);
  }

  @Test
  void all_except_999_has_4093_members() {
    // US DoD layer-2 guide item V-101149 writes the same list as 1-998,1000-4094.
    AllowedList list = read(List.of(set(ListChange.EXCEPT, VlanSet.of(999))));
    assertThat(list.certain()).hasToString("1-998,1000-4094");
    assertThat(list.certain().size()).isEqualTo(4093);
  }
}
