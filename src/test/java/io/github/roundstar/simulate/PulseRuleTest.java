package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The loop is a plain integrator: its own arithmetic and its drive reproduce published runs. */
class PulseRuleTest {
  private static final double LIMIT = 1e6;

  /** x[n+1] = x[n] + 0.1 - 0.7 x[n] worked by hand. */
  @Test
  @Tag("identity")
  void rampIsFollowedWithLag() {
    double[] expected = {1, 0.4, 0.22, 0.166, 0.1498, 0.14494, 0.143482};

    double[] offsets = closedLoop(rule(0.7), 1, 0.1, new double[expected.length]);

    for (int i = 0; i < expected.length; i++) {
      assertThat(offsets[i]).isCloseTo(expected[i], within(1e-12));
    }
  }

  /**
   * 1000 frames of a linear-congruential noise series (that of the test suite of NIST SP 1065,
   * scaled to unit variance), computed in NumPy 1.24.
   */
  @Tag("identity")
  @ParameterizedTest
  @CsvSource({
    "0.7, 0.4, 0,    -0.51024881, 0.37207318, -0.25984534, 0.0003064907, 0.4991161584",
    "0.7, 0.4, 0.05, -0.46024881, 0.43707318, -0.19034534, 0.0716330213, 0.5042387946",
    "0.5, 1.0, 0,    -1.22373639, 0.70100136, -0.57816755, 0.0008468530, 1.1586049145"
  })
  void noisyRunIsReproduced(
      double gain,
      double sigma,
      double drift,
      double second,
      double third,
      double fourth,
      double mean,
      double rms) {
    double[] noise = new double[1000];
    long state = 1234567890;
    for (int i = 0; i < noise.length; i++) {
      noise[i] = sigma * (state / 2147483647.0 - 0.5) * Math.sqrt(12);
      state = 16807 * state % 2147483647;
    }

    double[] measured = closedLoop(rule(gain), 0, drift, noise);

    double sum = 0;
    double squares = 0;
    for (double value : measured) {
      sum += value;
      squares += value * value;
    }
    assertThat(measured[1]).isCloseTo(second, within(1e-8));
    assertThat(measured[2]).isCloseTo(third, within(1e-8));
    assertThat(measured[3]).isCloseTo(fourth, within(1e-8));
    assertThat(sum / 1000).isCloseTo(mean, within(1e-10));
    assertThat(Math.sqrt(squares / 1000)).isCloseTo(rms, within(1e-10));
  }

  @Test
  void smallOffsetsAndShortPulsesAreLeftAlone() {
    PulseRule rule = new PulseRule(new LoopPlan.Axis(0.5, 0.3, 40, 0), 7.5, -1000, 1000);

    assertThat(rule.next(0.29)).isEqualTo(0);
    assertThat(rule.next(-0.5)).isEqualTo(0);
    assertThat(rule.next(-0.9)).isCloseTo(-60, within(1e-9));
  }

  @Test
  void longPulsesAreCutAndForbiddenWaysStayShut() {
    PulseRule northOnly = new PulseRule(new LoopPlan.Axis(1, 0, 0, 0), 7.5, 0, 800);

    assertThat(northOnly.next(100)).isEqualTo(800);
    assertThat(northOnly.next(-100)).isEqualTo(0);
  }

  @Test
  void delayedLoopAnswersAnOlderOffset() {
    PulseRule rule = new PulseRule(new LoopPlan.Axis(1, 0, 0, 1), 1, -LIMIT, LIMIT);

    assertThat(rule.next(0.2)).isEqualTo(0);
    assertThat(rule.next(0.3)).isCloseTo(200, within(1e-9));
    assertThat(rule.next(Double.NaN)).isCloseTo(300, within(1e-9));
    assertThat(rule.next(0.4)).isEqualTo(0);
  }

  private static PulseRule rule(double gain) {
    return new PulseRule(new LoopPlan.Axis(gain, 0, 0, 0), 7.5, -LIMIT, LIMIT);
  }

  /** Measured offsets of a drive without play that moves 7.5 arcsec per second. */
  private static double[] closedLoop(PulseRule rule, double first, double drift, double[] noise) {
    AxisDrive drive = new AxisDrive(0, 0, 0);
    double[] measured = new double[noise.length];
    for (int i = 0; i < noise.length; i++) {
      measured[i] = first + i * drift - drive.tubeArcsec() + noise[i];
      double millis = rule.next(measured[i]);
      drive.push(Math.signum(millis) * 7.5, Math.abs(millis) / 1000);
    }
    return measured;
  }
}
