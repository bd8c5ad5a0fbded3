package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HiddenTextTest {
  private final HiddenText text = HiddenText.of("  Vendor-Thing \t on  hunter2 ");

  @Test
  void the_whole_text_fits_a_pattern_in_any_case_and_with_any_blanks() {
    assertThat(text.matches("vendor-thing on *")).isTrue();
    assertThat(text.matches(" vendor-thing   ON hunter2")).isTrue();
    assertThat(text.matches("vendor-*")).isTrue();
    assertThat(text.matches("vendor-thing ?n hunter2")).isTrue();
    assertThat(text.matches("vendor-thing")).isFalse();
    assertThat(text.matches("vendor-thing off *")).isFalse();
  }

  @Test
  void nothing_of_the_text_can_be_seen_or_compared() {
    assertThat(text).hasToString("***");
    assertThat(text).isEqualTo(HiddenText.of("another")).hasSameHashCodeAs(HiddenText.of("x"));
  }

  @Test
  void no_text_and_a_text_too_long_to_keep_fit_no_pattern() {
    assertThat(HiddenText.NONE.matches("*")).isFalse();
    assertThat(HiddenText.of("x".repeat(200)).matches("x*")).isTrue();
    assertThat(HiddenText.of("x".repeat(201)).matches("x*")).isFalse();
  }
}
