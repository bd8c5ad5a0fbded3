package plumbline.fabric;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PathCostTest {
  /** IEEE 802.1D-1998, table 8-5, as an open bridge implementation repeats it. */
  @ParameterizedTest
  @CsvSource({"10,100", "100,19", "1000,4", "10000,2"})
  void short_costs_are_those_of_the_published_table(long megabits, long cost) {
    assertThat(PathCost.SHORT.of(megabits)).hasValue(cost);
  }

  /**
   * IEEE 802.1D-2004, table 17-3, and IEEE 802.1Q, table 13-4; 2.5 Gb/s and 40 Gb/s derived from
   * the formula of 802.1D-2004, 17.14 (from memory).
   */
  @ParameterizedTest
  @CsvSource({
    "10,2000000",
    "100,200000",
    "1000,20000",
    "10000,2000",
    "100000,200",
    "1000000,20",
    "2500,8000",
    "40000,500"
  })
  void long_costs_are_those_of_the_published_table(long megabits, long cost) {
    assertThat(PathCost.LONG.of(megabits)).hasValue(cost);
  }

  @Test
  void a_speed_without_a_published_short_cost_has_none() {
    assertThat(PathCost.SHORT.of(2_500)).isEmpty();
    assertThat(PathCost.LONG.of(0)).isEmpty();
  }
}
