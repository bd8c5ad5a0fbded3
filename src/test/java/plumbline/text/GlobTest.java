package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GlobTest {
  @Test
  void a_star_is_any_text_and_a_question_mark_one_character() {
    assertThat(Glob.matches("load-interval *", "load-interval 30")).isTrue();
    assertThat(Glob.matches("vmhost-n?", "vmhost-n1")).isTrue();
    assertThat(Glob.matches("vmhost-n?", "vmhost-n12")).isFalse();
    assertThat(Glob.matches("*", "")).isTrue();
  }

  @Test
  void every_other_character_stands_for_itself() {
    assertThat(Glob.matches("a.b", "a.b")).isTrue();
    assertThat(Glob.matches("a.b", "axb")).isFalse();
    assertThat(Glob.matches("(x)[y]\\E", "(x)[y]\\E")).isTrue();
  }
}
