package io.github.roundstar.diagnosis.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.ladder.ExposureLengths.Crossing;
import io.github.roundstar.results.LongestExposure.Length;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Where the share of round exposures falls below nine in ten, by hand. */
@Tag("identity")
class ExposureLengthsTest {
  private static final double[] SECONDS = {60, 120, 240, 480};

  private static Crossing of(int present, double... round) {
    return ExposureLengths.longest(SECONDS, at -> round[at], present, 0.9);
  }

  /** From 1.0 at 120 s to 0.8 at 240 s: 0.9 is half way, at 120 sqrt(2) = 169.7 s. */
  @Test
  void roundnessIsLostBetweenTwoLengths() {
    Crossing crossing = of(1, 1, 1, 0.8, 0);
    assertThat(crossing.stays()).isEqualTo(120);
    assertThat(crossing.between()).isCloseTo(169.706, within(1e-3));
    assertThat(crossing.fails()).isEqualTo(240);
    assertThat(of(3, 1, 1, 0.8, 0)).isEqualTo(crossing);
    assertThat(of(0, 1, 1, 0.8, 0)).isEqualTo(crossing);
  }

  /** Nine of ten exactly are enough; a line through 0.9 and 0.3 leaves 0.9 at its beginning. */
  @Test
  void nineInTenAreEnough() {
    assertThat(of(1, 1, 0.9, 0.3, 0)).isEqualTo(new Crossing(120, 120, 240));
    assertThat(of(1, 1, 0.89, 0.3, 0).stays()).isEqualTo(60);
  }

  /**
   * A lucky long length does not count once a shorter one was lost, nor does an unlucky short one.
   */
  @Test
  void theSearchGoesFromThePresentLength() {
    assertThat(of(1, 1, 1, 0.5, 1).fails()).isEqualTo(240);
    assertThat(of(2, 0.5, 1, 1, 0.5).stays()).isEqualTo(240);
  }

  @Test
  void beyondWhatWasPlayedNothingIsTold() {
    Length longer = ExposureLengths.length(List.of(of(1, 1, 1, 1, 1), of(1, 1, 1, 1, 0.95)));
    assertThat(longer).isEqualTo(new Length(Length.LONGER, null, 480.0, null));
    Length shorter = ExposureLengths.length(List.of(of(1, 0.2, 0, 0, 0), of(1, 0.1, 0, 0, 0)));
    assertThat(shorter).isEqualTo(new Length(Length.SHORTER, null, null, 60.0));
  }

  /**
   * Of 41 draws one on either side lies outside of 95 %: floor(0.025 x 40) = 1. Draws that end at
   * 60, 120 and 240 s, once, 39 times and once, leave 120 s and what follows it, 240 s.
   */
  @Test
  void oneDrawInFortyDoesNotMakeTheInterval() {
    List<Crossing> draws = new ArrayList<>();
    draws.add(of(0, 1, 0, 0, 0));
    for (int i = 0; i < 39; i++) {
      draws.add(of(1, 1, 0.9, 0, 0));
    }
    draws.add(of(2, 1, 1, 0.9, 0));
    assertThat(ExposureLengths.length(draws))
        .isEqualTo(new Length(Length.FOUND, 120.0, 120.0, 240.0));
  }
}
