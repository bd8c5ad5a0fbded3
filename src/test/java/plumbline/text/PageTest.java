package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import plumbline.text.Page.Ink;

class PageTest {
  @Test
  void words_hang_under_the_first_line() {
    assertThat(new Page(false).hanging("  so  ", "a".repeat(70) + " bbbbb c").toString())
        .isEqualTo("  so  " + "a".repeat(70) + "\n      bbbbb c\n");
  }

  @Test
  void a_mark_stands_out_in_its_ink_and_nothing_else_does() {
    assertThat(new Page(true).marked(Ink.ALARM, " ", "BREAKS  ", "a port").toString())
        .isEqualTo(" \u001b[1;31mBREAKS\u001b[0m  a port\n");
    assertThat(new Page(false).marked(Ink.ALARM, " ", "BREAKS  ", "a port").toString())
        .isEqualTo(" BREAKS  a port\n");
  }

  @Test
  void words_go_below_a_mark_that_leaves_them_no_room() {
    String name = "s".repeat(90);
    assertThat(new Page(true).marked(Ink.STRONG, "", name, "its words").toString())
        .isEqualTo("s".repeat(80) + "\n" + "s".repeat(10) + "\n    its words\n");
    assertThat(new Page(true).heading(name).toString())
        .isEqualTo("s".repeat(80) + "\n" + "s".repeat(10) + "\n");
  }

  @Test
  void further_lines_of_an_entry_are_indented_more() {
    assertThat(new Page(false).item("a".repeat(70) + " bbbbbbbbbb cc").toString())
        .isEqualTo("  " + "a".repeat(70) + "\n    bbbbbbbbbb cc\n");
  }

  @Test
  void an_escape_sequence_in_the_words_does_not_colour_a_page() {
    assertThat(new Page(true).paragraph("a\u001b[31mb").toString()).isEqualTo("ab\n");
  }

  @Test
  void a_page_is_as_wide_as_it_is_said_to_be_within_bounds() {
    String words = "ab ".repeat(100).strip();
    assertThat(widest(70, words)).isEqualTo(68);
    assertThat(widest(80, words)).isEqualTo(80);
    assertThat(widest(20, words)).as("no narrower than 60").isEqualTo(59);
    assertThat(widest(500, words)).as("no wider than 120").isEqualTo(119);
  }

  private static int widest(int width, String words) {
    return new Page(new Page.Look(false, width))
        .paragraph(words)
        .toString()
        .lines()
        .mapToInt(String::length)
        .max()
        .orElseThrow();
  }
}
