package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A line shows its amplitude, and wander and noise stay below the line drawn for them. */
@Tag("identity")
class AmplitudeTraceTest {
  private static final Gears UNKNOWN = new Gears(OptionalDouble.empty(), List.of());

  /** 2400 even frames of 3 s: 480 s is bin 15. */
  @Test
  void sinusoidOnABinShowsItsAmplitude() {
    double[] seconds = new double[2400];
    double[] arcsec = new double[2400];
    double[] noise = PlainNights.USUAL.noise(0.05).drift(0).run(1, 1).motion().arcsec();
    Arrays.setAll(seconds, i -> 3.0 * i);
    Arrays.setAll(arcsec, i -> 4 * Math.sin(2 * Math.PI * seconds[i] / 480 + 1) + 0.1 * noise[i]);
    AmplitudeTrace trace = trace(PlainNights.USUAL.run(1, seconds, arcsec, new boolean[2400]));
    assertThat(trace.size()).isEqualTo(1201);
    assertThat(trace.periodSeconds(15)).isCloseTo(480, within(1e-9));
    assertThat(trace.amplitudeArcsec(15)).isCloseTo(4, within(0.01));
    assertThat(trace.amplitudeArcsec(15)).isGreaterThan(trace.onePercentArcsec(15));
    assertThat(trace.amplitudeArcsec(150)).isLessThan(trace.onePercentArcsec(150));
  }

  @Test
  void wanderAndNoiseHardlyEverReachTheirLine() {
    int nights = 0;
    double closest = 0;
    for (long seed = 0; seed < 100; seed++) {
      AmplitudeTrace trace = trace(PlainNights.USUAL.frames(1200).run(1, seed));
      double nearest = 0;
      for (int k = 1; k < trace.size(); k++) {
        nearest = Math.max(nearest, trace.amplitudeArcsec(k) / trace.onePercentArcsec(k));
      }
      nights += nearest > 1 ? 1 : 0;
      closest = Math.max(closest, nearest);
    }
    assertThat(nights).isLessThanOrEqualTo(6);
    // The line is no idle one either: the noisiest of a hundred nights comes near it.
    assertThat(closest).isGreaterThan(0.85);
  }

  @Test
  void lineBelongsToTheRunShownAndNotToTheSumOfAll() {
    AxisRun longest = PlainNights.USUAL.run(1, 1);
    AxisRun other = PlainNights.USUAL.frames(2300).run(2, 2);
    AmplitudeTrace alone = trace(longest);
    AmplitudeTrace together = trace(longest, other);
    assertThat(together.size()).isEqualTo(alone.size());
    assertThat(together.amplitudeArcsec(400)).isCloseTo(alone.amplitudeArcsec(400), within(1e-6));
    assertThat(together.onePercentArcsec(400))
        .isCloseTo(alone.onePercentArcsec(400), within(0.02 * alone.onePercentArcsec(400)));
  }

  private static AmplitudeTrace trace(AxisRun... runs) {
    return PeriodicError.of(List.of(runs), UNKNOWN).value().orElseThrow().amplitudes();
  }
}
