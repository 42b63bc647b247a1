package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.Tolerance;
import io.github.roundstar.diagnosis.ToleranceQuestion;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Equipment.Limits;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.motion.Answer;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Motion that {@code tolerance} just allows brings an exposure to its limit of elongation, by the
 * same shape that a report judges exposures by.
 */
@Tag("identity")
class RoundAsToleranceSaysTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final int FRAMES = 2000;

  private static Tolerance tolerance(double seeing, double limit) {
    Equipment unknown = Equipment.UNKNOWN;
    return Tolerance.of(
        new ToleranceQuestion(
            new Equipment(
                unknown.site(),
                unknown.mount(),
                unknown.guide(),
                unknown.imaging(),
                OptionalDouble.of(seeing),
                new Limits(limit, NONE)),
            NONE,
            NONE,
            NONE,
            NONE,
            NONE));
  }

  private static double elongation(IntToDoubleFunction eastArcsec, double seeing) {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < FRAMES; i++) {
      frames.add(i, eastArcsec.applyAsDouble(i), 0);
    }
    Optional<Estimate> certain = Optional.of(new Estimate(0, 0, 0));
    StarTrack track = StarTrack.measured(frames.build(), certain, certain);
    CoreShape core =
        CoreShape.of(track, 0, FRAMES, i -> true, new double[3], PredictedShape.variance(seeing));
    return PredictedShape.stretch(core).elongation();
  }

  /** Places as a Gaussian of this RMS has them. */
  private static IntToDoubleFunction scattered(double rms) {
    NormalDistribution normal = new NormalDistribution();
    return i -> rms * normal.inverseCumulativeProbability((i + 0.5) / FRAMES);
  }

  private static double value(Answer<Double> answer) {
    return answer.value().orElseThrow();
  }

  /**
   * By hand, of seeing 2.5 and limit 1.15: RMS 2.5 / 2.3548 sqrt(1.15^2 - 1) = 0.603. Drifts by
   * NumPy and SciPy (brentq): a Gaussian drawn along a box on a grid of 0.05 arcsec, its moments
   * under the Gaussian weight that has the same.
   */
  @ParameterizedTest
  @CsvSource({
    "2.5, 1.15, 2.00832",
    "1.6, 1.15, 1.28532",
    "3.4, 1.08, 1.99539",
    "2.2, 1.3, 2.50913"
  })
  void motionAtTheLimitIsRoundByAHair(double seeing, double limit, double trail) {
    Tolerance asked = tolerance(seeing, limit);
    double rms = value(asked.axisRmsArcsec());
    assertThat(elongation(scattered(rms), seeing)).isCloseTo(limit, within(0.004));
    assertThat(elongation(scattered(1.1 * rms), seeing)).isGreaterThan(limit);
    assertThat(elongation(scattered(0.9 * rms), seeing)).isLessThan(limit);
    double drift = value(asked.driftArcsec());
    assertThat(drift).isCloseTo(trail, within(0.002));
    assertThat(elongation(i -> drift * (i + 0.5) / FRAMES, seeing)).isCloseTo(limit, within(0.001));
  }
}
