package plumbline.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import plumbline.statement.LineMarks;
import plumbline.statement.MarkedText;

class MarkingTest {
  private static final ConfigReader READER = new ConfigReader(new StatementParser());

  private static MarkedText read(String text) {
    return READER.readMarked("sw1.cfg", "sw1", text).get(0);
  }

  @Test
  void the_same_said_in_other_words_has_one_mark() {
    LineMarks full =
        read("hostname sw1\ninterface Gi1/0/1\n switchport access vlan 10\n load-interval 30\n")
            .marks();
    LineMarks brief =
        read("host sw1\r\nint gi 1/0/1\r\n   SW acc vl  10\r\n\tload-int   30\r\n").marks();
    for (int line = 1; line <= 4; line++) {
      assertThat(brief.of(line)).as("line " + line).isEqualTo(full.of(line)).isNotZero();
    }
  }

  @Test
  void lines_that_are_not_known_differ_where_a_character_differs() {
    LineMarks marks = read("hostname sw1\nfrobnicate a\nfrobnicate b\nfrobnicate  a\n").marks();
    assertThat(marks.of(2)).isNotEqualTo(marks.of(3)).isEqualTo(marks.of(4));
  }

  @Test
  void the_text_is_the_one_that_is_read_without_marks() {
    String text =
        "hostname sw1\ninterface Gi1/0/1\n switchport trunk allowed vlan 10,\n 20\n!\nend\n";
    assertThat(read(text).text()).isEqualTo(READER.read("sw1.cfg", "sw1", text).get(0));
  }

  @Test
  void a_text_on_one_line_has_one_mark() {
    String text = "hostname sw1\\ninterface Gi1/0/1\\n shutdown\\nend\\n";
    assertThat(read(text).marks().of(1)).isNotZero();
    assertThat(read(text.replace("shutdown", "no shutdown")).marks().of(1))
        .isNotEqualTo(read(text).marks().of(1));
  }

  @Test
  void marks_show_nothing_of_the_text() {
    assertThat(read("hostname sw1\nenable secret Drawbridge7\n").marks().toString())
        .doesNotContain("Drawbridge");
  }
}
