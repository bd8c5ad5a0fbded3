package plumbline.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Only a slip of the fingers is corrected. */
class NearestTest {
  private static final List<String> WORDS =
      List.of("host-uplink", "switch-link", "access", "mst", "trunk", "required");

  @ParameterizedTest
  @CsvSource({
    "host-uplnk, host-uplink",
    "hsot-uplink, host-uplink",
    "HOST_UPLINK, host-uplink",
    "mts, mst",
    "acces, access",
    "requried, required",
    "switchlink, switch-link"
  })
  void a_slip_finds_its_word(String wrong, String right) {
    assertThat(Nearest.to(wrong, WORDS)).contains(right);
  }

  @ParameterizedTest
  @CsvSource({"dynamic", "x", "off", "forbidden", "tr", "link"})
  void another_word_finds_none(String wrong) {
    assertThat(Nearest.to(wrong, WORDS)).isEmpty();
  }

  @Test
  void the_first_of_equally_near_words_is_taken_and_an_exact_one_wins() {
    assertThat(Nearest.to("voice-c", List.of("voice-b", "voice-a"))).contains("voice-b");
    assertThat(Nearest.to("Voice-a", List.of("voice-b", "voice-a"))).contains("voice-a");
  }

  @Test
  void nothing_is_near_an_empty_or_an_endless_word() {
    assertThat(Nearest.to("", WORDS)).isEmpty();
    assertThat(Nearest.to("x".repeat(100_000), List.of("x".repeat(100_000)))).isEmpty();
  }
}
