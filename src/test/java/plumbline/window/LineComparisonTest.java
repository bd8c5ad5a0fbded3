package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import plumbline.result.LineChange;

class LineComparisonTest {
  private static final String BASE =
      """
      snmp-server community Drawbridge7 RO
      !
      interface GigabitEthernet1/0/1
       switchport mode access
       storm-control broadcast level 1.00
       ip access-group OLD in
      !
      ip access-list extended EDGE
       permit ip host 192.0.2.1 any
       deny ip any any
      !
      frobnicate the key Sluice99gate
      """;

  private static List<LineChange> changes(String after, String... told) {
    return LineComparison.of(
        Windows.window(Windows.campus(BASE), Windows.campus(after)), Set.of(told));
  }

  @Test
  void lines_of_a_block_that_is_not_read_are_counted() {
    assertThat(changes(BASE.replace(" deny ip any any\n", " permit ip any any\n")))
        .containsExactly(
            new LineChange("sw1", "ip access-list ...", List.of(), 1, 1, false, false));
  }

  @Test
  void the_order_of_such_lines_counts() {
    String first = " permit ip host 192.0.2.1 any\n";
    String second = " deny ip any any\n";
    assertThat(changes(BASE.replace(first + second, second + first)))
        .containsExactly(new LineChange("sw1", "ip access-list ...", List.of(), 0, 0, true, false));
  }

  @Test
  void of_a_statement_that_is_not_known_the_first_word_is_told_and_no_more() {
    List<LineChange> changes = changes(BASE.replace("Sluice99gate", "Sluice98gate"));
    assertThat(changes)
        .containsExactly(
            new LineChange(
                "sw1", "outside every block", List.of("frobnicate"), 1, 1, false, false));
  }

  @Test
  void a_secret_that_changed_is_counted_and_never_shown() {
    List<LineChange> changes = changes(BASE.replace("Drawbridge7", "Drawbridge8"));
    assertThat(changes)
        .containsExactly(
            new LineChange("sw1", "outside every block", List.of(), 1, 1, false, true));
    assertThat(changes.toString()).doesNotContain("Drawbridge");
  }

  @Test
  void lines_that_say_more_than_is_compared_count_unless_the_setting_is_told() {
    String level = BASE.replace("level 1.00", "level 2.00");
    String other = BASE.replace("access-group OLD", "access-group NEW");
    LineChange inPort =
        new LineChange("sw1", "interface GigabitEthernet1/0/1", List.of(), 1, 1, false, false);
    assertThat(changes(other)).containsExactly(inPort);
    assertThat(
            changes(
                BASE.replace(" storm-control broadcast level 1.00\n", ""),
                "GigabitEthernet1/0/1 storm-control"))
        .isEmpty();
    assertThat(changes(level)).hasSizeLessThanOrEqualTo(1);
  }

  @Test
  void lines_that_the_design_vouches_for_have_no_bearing() {
    SwitchWindow window =
        new SwitchWindow(
            "sw1",
            Windows.side(Windows.campus(BASE), "frobnicate *"),
            Windows.side(
                Windows.campus(BASE.replace("Sluice99gate", "Sluice98gate")), "frobnicate *"));
    assertThat(LineComparison.of(window, Set.of()))
        .containsExactly(
            new LineChange("sw1", "outside every block", List.of("frobnicate"), 1, 1, false, true));
  }

  @Test
  void comments_and_times_of_the_header_are_no_lines() {
    assertThat(
            changes(
                "! Last configuration change at 10:11:12 UTC Tue Nov 3 2026\n! by nobody\n" + BASE))
        .isEmpty();
  }

  @Test
  void what_a_part_of_a_text_lacks_is_not_told_to_be_removed() {
    String part = "interface Gi1/0/1\n switchport mode access\n";
    SwitchWindow window = Windows.window(Windows.campus(BASE), part);
    assertThat(window.after().isPart()).isTrue();
    assertThat(LineComparison.of(window, Set.of())).isEmpty();
  }
}
