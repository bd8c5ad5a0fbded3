package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What begins a formula: common practice, no source. */
class CellsTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        "  =1",
        "\"=1",
        "＝1",
        "＋1",
        "－1",
        "＠x",
        "-"
      })
  void what_may_begin_a_formula_is_marked_as_text(String text) {
    assertThat(Cells.neutral(text)).isEqualTo("'" + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "a=1", "5-4", "vmhost-n1 nic0", "a; b", "'=1", "1+1", "x@y", "a;b-c"})
  void other_text_stays_as_it_is(String text) {
    assertThat(Cells.neutral(text)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a;=1", "a; +1", "a;\"=1"})
  void a_semicolon_begins_a_cell_in_many_countries(String text) {
    assertThat(Cells.neutral(text)).isEqualTo(text.replace(";", ";'"));
  }
}
