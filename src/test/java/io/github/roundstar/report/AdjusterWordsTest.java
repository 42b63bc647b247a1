package io.github.roundstar.report;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.PolarAxis;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which way to turn which adjuster, only where the interval leaves no doubt. */
class AdjusterWordsTest {
  @Test
  void axisEastAndLowGoesWestAndUp() {
    List<String> steps = AdjusterWords.steps(axis(11.2, 0.5, -7.1, 0.4));

    assertThat(steps).hasSize(3);
    assertThat(steps.get(0)).contains("azimuth", "11.2", "west");
    assertThat(steps.get(1)).contains("altitude", "7.1", "up");
    assertThat(steps.get(2)).contains("0.12 arcsec a minute");
  }

  @Test
  void axisWestAndHighGoesEastAndDown() {
    List<String> steps = AdjusterWords.steps(axis(-3, 0.5, 4, 0.4));

    assertThat(steps.get(0)).contains("east").doesNotContain("west");
    assertThat(steps.get(1)).contains("down");
  }

  @Test
  void doubtfulErrorIsLeftAlone() {
    assertThat(AdjusterWords.steps(axis(1, 1.5, -0.3, 0.2))).isEmpty();
    assertThat(AdjusterWords.steps(axis(0.4, 0.1, 0.4, 0.1))).isEmpty();
  }

  private static PolarAxis axis(double azimuth, double half, double altitude, double other) {
    return new PolarAxis(
        Estimate.symmetric(azimuth, half),
        Estimate.symmetric(altitude, other),
        Estimate.symmetric(Math.hypot(azimuth, altitude), half),
        null,
        "two-pointings",
        0.0,
        null,
        null,
        null,
        null,
        null,
        null,
        true,
        0.0,
        null,
        0.12,
        null,
        null);
  }
}
