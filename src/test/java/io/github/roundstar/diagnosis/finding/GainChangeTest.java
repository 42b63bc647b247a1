package io.github.roundstar.diagnosis.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What another gain saves, cause by cause, as the closed forms of a first-order loop have it. */
class GainChangeTest {
  /** (0.3 * 1.7) / (0.6 * 1.4) of a random walk is left, a quarter of what is slow. */
  @Tag("identity")
  @Test
  void aGainTwiceAsStrongKeepsMoreOfAWanderThanOfASwing() {
    assertThat(GainChange.savedArcsec2(0, 1, 0, 0.3, 0.6)).isCloseTo(1 - 0.607143, within(1e-6));
    assertThat(GainChange.savedArcsec2(1, 0, 0, 0.3, 0.6)).isCloseTo(0.75, within(1e-12));
    assertThat(GainChange.savedArcsec2(0, 0, 1, 0.3, 0.6)).isCloseTo(1 - 1.7 / 1.4, within(1e-12));
  }
}
