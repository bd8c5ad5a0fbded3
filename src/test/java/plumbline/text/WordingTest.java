package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Parts of messages are safe to print and short. */
class WordingTest {
  @Test
  void quotes_hold_no_control_characters_and_one_line() {
    assertThat(Wording.quote("a\u001b[31m\n b\u0000\u202ec")).isEqualTo("\"a[31m bc\"");
    assertThat(Wording.quote("say \"x\"")).isEqualTo("\"say 'x'\"");
  }

  @Test
  void quotes_are_cut_between_characters() {
    assertThat(Wording.quote("x".repeat(40))).hasSize(42);
    assertThat(Wording.quote("\ud83d\ude00".repeat(41)))
        .isEqualTo("\"" + "\ud83d\ude00".repeat(37) + "...\"");
    assertThat(Wording.quote(" ".repeat(1000) + "x")).isEqualTo("\"...\"");
  }

  @Test
  void alternatives_are_at_most_five() {
    assertThat(Wording.alternatives(List.of("a"))).isEqualTo("\"a\"");
    assertThat(Wording.alternatives(List.of("a", "b", "c"))).isEqualTo("\"a\", \"b\" or \"c\"");
    assertThat(Wording.alternatives(List.of("a", "b", "c", "d", "e", "f", "g")))
        .isEqualTo("\"a\", \"b\", \"c\", \"d\", \"e\" or 2 more");
  }

  @Test
  void the_remedy_is_the_nearest_word_or_some_words_or_what_to_say_without_any() {
    assertThat(Wording.remedy("acces", List.of("access", "trunk"), "none"))
        .isEqualTo("did you mean \"access\"?");
    assertThat(Wording.remedy("xyz", List.of("access", "trunk"), "none"))
        .isEqualTo("expected \"access\" or \"trunk\"");
    assertThat(Wording.remedy("xyz", List.of(), "the design has no roles"))
        .isEqualTo("the design has no roles");
  }
}
