package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FramesBuilder;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The predicted star image is the convolution that it should be. */
class CoreShapeTest {
  private static final int GRID = 40;

  /** Places whose distribution is as good as Gaussian with this covariance. */
  private static StarTrack track(double ee, double nn, double en, double noise) {
    NormalDistribution normal = new NormalDistribution();
    double root = Math.sqrt(ee);
    double across = Math.sqrt(nn - en * en / ee);
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < GRID * GRID; i++) {
      double u = normal.inverseCumulativeProbability((i % GRID + 0.5) / GRID);
      double v = normal.inverseCumulativeProbability((i / GRID + 0.5) / GRID);
      frames.add(i, root * u, en / root * u + across * v);
    }
    Optional<Estimate> floor = Optional.of(new Estimate(noise, noise, noise));
    return StarTrack.measured(frames.build(), floor, floor);
  }

  /**
   * Sums of covariances of a round image of FWHM 2.0 and of guiding; axis ratio and angle by NumPy
   * eigh. A Gaussian keeps its moments under the matched weight.
   */
  @Tag("published")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # Cee, Cnn,  Cen,   a/b,         position angle
          0.36,  0.16, 0,     1.107666576, 90
          0.36,  0.16, 0.10,  1.156177804, 67.5
          0.36,  0.16, -0.10, 1.156177804, 112.5
          """)
  void gaussianMotionAddsItsCovariance(
      double ee, double nn, double en, double ratio, double angle) {
    StarTrack track = track(ee, nn, en, 0);
    CoreShape core =
        CoreShape.of(track, 0, track.size(), i -> true, new double[3], PredictedShape.variance(2));
    assertThat(PredictedShape.stretch(core).elongation()).isCloseTo(ratio, within(0.006));
    assertThat(PredictedShape.stretch(core).angleDegrees()).isCloseTo(angle, within(0.5));
  }

  @Tag("identity")
  @Test
  void noiseOfTheFramesIsNotCountedTwice() {
    StarTrack noisy = track(0.36 + 0.25, 0.16 + 0.25, 0, 0.5);
    CoreShape core =
        CoreShape.of(noisy, 0, noisy.size(), i -> true, new double[3], PredictedShape.variance(2));
    assertThat(core.ee()).isCloseTo(PredictedShape.variance(2) + 0.36, within(0.02));
    assertThat(core.nn()).isCloseTo(PredictedShape.variance(2) + 0.16, within(0.02));
  }

  @Test
  void aBriefExcursionHardlyStretchesTheCore() {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 100; i++) {
      frames.add(i, i < 5 ? 10 : 0, 0);
    }
    Optional<Estimate> none = Optional.of(new Estimate(0, 0, 0));
    StarTrack track = StarTrack.measured(frames.build(), none, none);
    WindowMotion motion = WindowMotion.of(track, 0, 100, i -> true);
    CoreShape core =
        CoreShape.of(track, 0, 100, i -> true, new double[3], PredictedShape.variance(2.4));
    assertThat(motion.ee()).isGreaterThan(4);
    assertThat(PredictedShape.stretch(core).elongation()).isLessThan(1.05);
  }

  @Test
  void ditherOfUnknownSizeIsNoMotionOfTheStar() {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 100; i++) {
      frames.add(i, i < 50 ? 0 : -5, 0);
      if (i == 50) {
        frames.dither(Double.NaN, Double.NaN);
      }
    }
    StarTrack track = StarTrack.measured(frames.build(), Optional.empty(), Optional.empty());
    assertThat(WindowMotion.of(track, 0, 100, i -> true).ee()).isLessThan(1e-9);
  }
}
