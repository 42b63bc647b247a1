package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A family keeps its sinusoids whatever gear it is counted by. */
class FamilyTest {
  private static final Family WORM = Family.ofPeriod(480, 1, Family.WORM);

  @Test
  void harmonicsAreListedOnceAndInOrder() {
    assertThat(WORM.withHarmonic(4).withHarmonic(2).withHarmonic(4).harmonics())
        .containsExactly(1, 2, 4);
  }

  @Test
  void slowerGearKeepsTheFrequencies() {
    Family slower = WORM.withHarmonic(2).slower(3);
    assertThat(slower.periodSeconds()).isCloseTo(1440, within(1e-9));
    assertThat(slower.harmonics()).containsExactly(3, 6);
    assertThat(slower.hertz(3)).isCloseTo(1 / 480.0, within(1e-15));
  }

  @Test
  void onlyTheWormsHarmonicsAreNumbered() {
    assertThat(WORM.label(1)).isEqualTo("worm");
    assertThat(WORM.label(3)).isEqualTo("worm/3");
    assertThat(Family.ofPeriod(66, 1, "gear:transfer").label(2)).isEqualTo("gear:transfer");
    assertThat(Family.ofPeriod(66, 1, Family.UNLABELLED).label(2)).isEqualTo("unlabelled");
  }
}
