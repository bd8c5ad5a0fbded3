package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class DisplayTest {
  @Test
  void escape_sequences_leave_no_trace() {
    // ECMA-48 5.4, 8.3.117: select graphic rendition, seven-bit and eight-bit introducer
    assertThat(Display.clean("a\u001b[1;31mred\u001b[0m b\u009b2Jc")).isEqualTo("ared bc");
  }

  @Test
  void a_title_sequence_loses_its_controls() {
    assertThat(Display.clean("x\u001b]0;title\u0007y")).isEqualTo("x]0;titley");
  }

  @Test
  void bidirectional_and_invisible_marks_are_dropped() {
    // Unicode Standard Annex 9: explicit directional formatting characters
    assertThat(Display.clean("a\u202eb\u2066c\u2069d\u200fe\u200bf\ufeffg")).isEqualTo("abcdefg");
  }

  @Test
  void tabs_and_line_breaks_become_blanks_and_c1_controls_vanish() {
    assertThat(Display.clean("a\tb\nc\rd\u0085e\u007ff")).isEqualTo("a b c def");
  }

  @Test
  void letters_of_every_script_stay() {
    assertThat(Display.clean("Fähre 渡し船 \u0394")).isEqualTo("Fähre 渡し船 \u0394");
  }

  @Test
  void wide_characters_take_two_columns_and_marks_none() {
    // Unicode Standard Annex 11: ideographs are W, full-width forms F, combining marks take none
    assertThat(Display.width("ab")).isEqualTo(2);
    assertThat(Display.width("渡し")).isEqualTo(4);
    assertThat(Display.width("\uff21")).isEqualTo(2);
    assertThat(Display.width("\uff71")).isEqualTo(1);
    assertThat(Display.width("e\u0301")).isEqualTo(1);
  }

  @Test
  void lines_break_at_blanks() {
    assertThat(Display.wrap("one two three four", 9)).containsExactly("one two", "three", "four");
  }

  @Test
  void an_overlong_list_breaks_behind_a_comma() {
    assertThat(Display.wrap("vlan 10,20,30,40,50", 8))
        .containsExactly("vlan", "10,20,", "30,40,50");
  }

  @Test
  void an_overlong_word_without_a_comma_breaks_anywhere() {
    assertThat(Display.wrap("aaaaaaaaaa", 4)).containsExactly("aaaa", "aaaa", "aa");
  }

  @Test
  void a_line_too_narrow_for_a_wide_character_is_refused() {
    assertThatThrownBy(() -> Display.wrap("x", 1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Property(tries = 300)
  void no_line_is_wider_than_asked_and_no_letter_is_lost(
      @ForAll String text, @ForAll @IntRange(min = 2, max = 40) int columns) {
    String clean = Display.clean(text);
    var lines = Display.wrap(clean, columns);
    assertThat(lines).allMatch(line -> Display.width(line) <= columns);
    assertThat(String.join("", lines).replace(" ", "")).isEqualTo(clean.strip().replace(" ", ""));
  }

  @Property(tries = 300)
  void clean_text_has_no_control_character(@ForAll String text) {
    assertThat(Display.clean(text).chars().filter(Character::isISOControl).count()).isZero();
  }
}
