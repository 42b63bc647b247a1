package io.github.roundstar.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A mistyped name finds the one it probably means. */
class NearestNameTest {
  /**
   * Jurafsky &amp; Martin, Speech and Language Processing, 2nd ed., section 3.11: 5 between these
   * words when a replacement costs 1.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource("intention, execution, 5")
  void distanceAgreesWithTheTextbook(String one, String other, int distance) {
    assertThat(NearestName.distance(one, other)).isEqualTo(distance);
    assertThat(NearestName.distance(other, one)).isEqualTo(distance);
  }

  @Test
  void distanceToNothingIsTheLength() {
    assertThat(NearestName.distance("", "abc")).isEqualTo(3);
    assertThat(NearestName.distance("abc", "")).isEqualTo(3);
    assertThat(NearestName.distance("abc", "abc")).isZero();
  }

  @Test
  void theNearestWins() {
    assertThat(NearestName.of("ra_offst", List.of("dec_offset", "ra_offset")))
        .hasValue("ra_offset");
    assertThat(NearestName.of("x", List.of("b", "a"))).hasValue("a");
    assertThat(NearestName.of("x", List.of())).isEmpty();
  }
}
