package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Scatter is about the run's mean, divisor n, used frames only. */
class StarScatterTest {
  private static final Offset<Double> TEN_DIGITS = within(6e-11);

  private static final double[] RA = {0.5, -0.3, 0.8, -0.6, 0.1};
  private static final double[] DEC = {0.2, 0.4, -0.1, -0.5, 0.3};

  /** NumPy: std with divisor n, mean, and percentile (linear, type 7) of five offsets. */
  @Test
  @Tag("published")
  void agreesWithNumpy() {
    StarScatter scatter = StarScatter.of(frames(RA, DEC)).orElseThrow();
    assertThat(scatter.frames()).isEqualTo(5);
    assertThat(scatter.rmsArcsec(Axis.RA)).isCloseTo(0.5099019514, TEN_DIGITS);
    assertThat(scatter.rmsArcsec(Axis.DEC)).isCloseTo(0.3261901286, TEN_DIGITS);
    assertThat(scatter.meanArcsec(Axis.RA)).isCloseTo(0.1, TEN_DIGITS);
    assertThat(scatter.meanArcsec(Axis.DEC)).isCloseTo(0.06, TEN_DIGITS);
    assertThat(scatter.rmsRadialArcsec()).isCloseTo(Math.sqrt(0.26 + 0.1064), TEN_DIGITS);
    assertThat(scatter.peakArcsec(Axis.RA)).isCloseTo(0.7, TEN_DIGITS);
    assertThat(scatter.peakArcsec(Axis.DEC)).isCloseTo(0.56, TEN_DIGITS);
    // Distances 0, 0.4, 0.4, 0.7, 0.7 and 0.14, 0.16, 0.24, 0.34, 0.56: rank 0.95 * 4 = 3.8.
    assertThat(scatter.p95Arcsec(Axis.RA)).isCloseTo(0.7, TEN_DIGITS);
    assertThat(scatter.p95Arcsec(Axis.DEC)).isCloseTo(0.34 + 0.8 * 0.22, TEN_DIGITS);
    assertThat(scatter.aboutMeanArcsec(Axis.RA))
        .containsExactly(new double[] {0.4, -0.4, 0.7, -0.7, 0}, within(1e-15));
  }

  @Test
  void radiusIsTakenPerFrame() {
    StarScatter scatter =
        StarScatter.of(frames(new double[] {3, -3}, new double[] {4, -4})).orElseThrow();
    assertThat(scatter.p95RadiusArcsec()).isCloseTo(5, within(1e-12));
  }

  @Test
  void onlyUsedFramesCount() {
    FramesBuilder builder = new FramesBuilder().add(0, 9, 9).state(FrameState.SETTLING);
    builder.add(3, 1, 2).add(6, 3, 2).add(9, Double.NaN, Double.NaN).state(FrameState.LOST);
    StarScatter scatter = StarScatter.of(builder.build()).orElseThrow();
    assertThat(scatter.frames()).isEqualTo(2);
    assertThat(scatter.rmsArcsec(Axis.RA)).isEqualTo(1);
    assertThat(scatter.rmsArcsec(Axis.DEC)).isZero();
  }

  @Test
  void withoutUsedFramesThereIsNone() {
    assertThat(StarScatter.of(new FramesBuilder().build())).isEmpty();
    assertThat(StarScatter.of(new FramesBuilder().add(0, 1, 1).state(FrameState.SETTLING).build()))
        .isEmpty();
  }

  /** Analysis of variance: the whole is the pooled parts and the scatter of the parts' means. */
  @Test
  @Tag("identity")
  void splittingARunTakesOutTheScatterOfTheMeans() {
    Random random = new Random(5);
    double[] ra = random.doubles(300, -1, 2).toArray();
    double[] dec = random.doubles(300, -0.5, 0.5).toArray();
    for (int i = 180; i < 300; i++) {
      ra[i] += 0.8;
    }
    Frames frames = frames(ra, dec);
    StarScatter whole = StarScatter.of(frames).orElseThrow();
    StarScatter first = StarScatter.of(frames.slice(0, 180)).orElseThrow();
    StarScatter second = StarScatter.of(frames.slice(180, 300)).orElseThrow();
    StarScatter pooled = first.pooledWith(second);
    assertThat(pooled.frames()).isEqualTo(300);
    for (Axis axis : Axis.values()) {
      double between = first.meanArcsec(axis) - second.meanArcsec(axis);
      assertThat(pooled.meanArcsec(axis)).isCloseTo(whole.meanArcsec(axis), within(1e-13));
      assertThat(Math.pow(pooled.rmsArcsec(axis), 2) + 0.6 * 0.4 * between * between)
          .isCloseTo(Math.pow(whole.rmsArcsec(axis), 2), within(1e-12));
    }
  }

  private static Frames frames(double[] ra, double[] dec) {
    FramesBuilder builder = new FramesBuilder();
    for (int i = 0; i < ra.length; i++) {
      builder.add(3 * i, ra[i], dec[i]);
    }
    return builder.build();
  }
}
