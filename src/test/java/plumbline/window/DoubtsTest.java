package plumbline.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DoubtsTest {
  private static final String EARLY =
      "! Last configuration change at 10:00:00 UTC Mon Nov 2 2026\n";
  private static final String LATE = "! Last configuration change at 10:00:00 UTC Tue Nov 3 2026\n";
  private static final String BODY = Windows.campus("interface Gi1/0/1\n shutdown\n!\n");

  @Test
  void texts_in_the_order_of_their_times_raise_no_doubt() {
    assertThat(Doubts.of(Windows.window(EARLY + BODY, LATE + BODY))).isEmpty();
    assertThat(Doubts.of(Windows.window(EARLY + BODY, EARLY + BODY))).isEmpty();
    assertThat(Doubts.of(Windows.window(BODY, LATE + BODY))).isEmpty();
  }

  @Test
  void a_text_before_that_is_the_later_one_looks_swapped() {
    assertThat(Doubts.of(Windows.window(LATE + BODY, EARLY + BODY)))
        .containsExactly(
            "the text before was changed at 2026-11-03T10:00, after the text after"
                + " (2026-11-02T10:00): the two look swapped");
  }

  @Test
  void clocks_of_unlike_zones_tell_nothing() {
    assertThat(Doubts.of(Windows.window(LATE.replace("UTC", "CET") + BODY, EARLY + BODY)))
        .isEmpty();
  }

  @Test
  void a_text_without_hostname_beside_one_with_it_looks_like_a_part() {
    String part = "vlan 10\n!\ninterface Gi1/0/1\n shutdown\n!\nend\n";
    assertThat(Doubts.of(Windows.window(BODY, part)))
        .containsExactly(
            "the text after has no hostname line, and the text before has one: it looks like a"
                + " part of a config");
  }
}
