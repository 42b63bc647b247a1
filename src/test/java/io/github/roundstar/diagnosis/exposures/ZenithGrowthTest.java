package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.exposures.ZenithGrowth.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Growth with the tangent of zenith distance is told from a stretch that stays. */
class ZenithGrowthTest {
  private static List<Point> points(double constant, double slope, int n) {
    Random random = new Random(4);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double tan = Math.tan(Math.toRadians(40 + 25.0 * i / n));
      points.add(new Point(tan * tan, constant + slope * tan * tan + 0.02 * random.nextGaussian()));
    }
    return points;
  }

  @Test
  void growthIsFoundWithItsInterval() {
    ZenithGrowth growth = ZenithGrowth.of(points(0.1, 0.36, 15)).orElseThrow();
    assertThat(growth.certain()).isTrue();
    assertThat(growth.arcsec2().covers(0.36)).isTrue();
    assertThat(growth.spreadArcsec().value()).isCloseTo(0.6, within(0.02));
  }

  @Test
  void aStretchThatStaysIsNoDispersion() {
    ZenithGrowth growth = ZenithGrowth.of(points(1, 0, 15)).orElseThrow();
    assertThat(growth.deniesHalfOf(new Point(1, 1))).isTrue();
    assertThat(growth.certain()).isFalse();
  }

  @Test
  void fewExposuresTellNothing() {
    assertThat(ZenithGrowth.of(points(0.1, 0.36, 4))).isEmpty();
  }
}
