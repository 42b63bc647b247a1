package io.github.roundstar.motion;

import io.github.roundstar.signal.FalseAlarm;
import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Periodogram;
import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.Series;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How strongly each trial frequency stands out of wander and noise, all runs together.
 *
 * <p>Each run's white residuals give a floating-mean periodogram with power p; - (n - 3) / 2 ln(1 -
 * p) is half of a chi-square of two degrees of freedom where only wander and noise are. The runs
 * are summed without regard to phase, which a slew loses. What the fitted wander and noise leave of
 * a slope in the spectrum, a coloured seeing for one, is divided out by {@link LocalBackground}.
 */
final class SummedSpectrum {
  /** Trial frequencies per resolution element 1 / T. */
  static final int OVERSAMPLING = 6;

  /**
   * A gear turns smoothly; a knock, a gust or a correction that the log does not show does not.
   * White steps beyond this many robust standard deviations are left out of the search, so that
   * jumps at even intervals are not taken for a gear.
   */
  private static final double JUMP = 4;

  /** A few steps can lie on a sinusoid to the last bit, whose power of 1 has no logarithm. */
  private static final double MOST_POWER = 1 - 1e-15;

  /** Upper bound on trial frequencies, so that no log, however long, exhausts the memory. */
  private static final int MOST_FREQUENCIES = 1 << 21;

  private final FrequencyGrid grid;
  private final double[] strength;
  private final double[] background;
  private final int runs;
  private final double timeVariance;

  private SummedSpectrum(
      FrequencyGrid grid, double[] strength, double[] background, int runs, double timeVariance) {
    this.grid = grid;
    this.strength = strength;
    this.background = background;
    this.runs = runs;
    this.timeVariance = timeVariance;
  }

  /** Trial frequencies from three turns in all runs together to two frames a turn. */
  static FrequencyGrid grid(List<AxisRun> runs) {
    double total = runs.stream().mapToDouble(r -> r.motion().spanSeconds()).sum();
    double longest = runs.stream().mapToDouble(r -> r.motion().spanSeconds()).max().orElse(1);
    double cadence = runs.stream().mapToDouble(AxisRun::cadenceSeconds).max().orElse(1);
    double low = PeriodicError.FEWEST_CYCLES / total;
    double high = 1 / (2 * cadence);
    double step = Math.max(1 / (OVERSAMPLING * longest), (high - low) / MOST_FREQUENCIES);
    return new FrequencyGrid(low, step, Math.max(1, (int) ((high - low) / step)));
  }

  static SummedSpectrum of(List<RunBackground> backgrounds, FrequencyGrid grid) {
    double[] strength = new double[grid.count()];
    double timeVariance = 0;
    for (RunBackground background : backgrounds) {
      Series steps = steadySteps(background);
      Periodogram periodogram = Periodogram.of(steps, grid);
      int left = background.fit().steps() - steps.size();
      double half = Math.max(0, (background.fit().degreesOfFreedom() - left - 3) / 2.0);
      for (int j = 0; j < strength.length; j++) {
        strength[j] -= half * Math.log1p(-Math.min(periodogram.power(j), MOST_POWER));
      }
      timeVariance += variance(steps.seconds()) / backgrounds.size();
    }
    double[] background = LocalBackground.of(strength, grid, backgrounds.size());
    return new SummedSpectrum(grid, strength, background, backgrounds.size(), timeVariance);
  }

  FrequencyGrid grid() {
    return grid;
  }

  /**
   * Level of what is not a line at trial frequency {@code j}; 1 where wander and noise tell it all.
   */
  double background(int j) {
    return background[j];
  }

  /** Index of the strongest trial frequency for which {@code eligible} holds, or -1. */
  int strongest(DoublePredicate eligible) {
    int best = -1;
    for (int j = 0; j < strength.length; j++) {
      if (eligible.test(grid.hertz(j)) && (best < 0 || height(j) > height(best))) {
        best = j;
      }
    }
    return best;
  }

  /** Frequency of the peak at {@code j}, between the trial frequencies, by a parabola [Hz]. */
  double refined(int j) {
    if (j == 0 || j == strength.length - 1) {
      return grid.hertz(j);
    }
    double curvature = height(j - 1) - 2 * height(j) + height(j + 1);
    double shift = curvature < 0 ? (height(j - 1) - height(j + 1)) / (2 * curvature) : 0;
    return grid.hertz(j) + Math.max(-0.5, Math.min(0.5, shift)) * grid.stepHz();
  }

  /** Probability that wander and noise alone reach the height of {@code j} anywhere in the band. */
  double falseAlarm(int j) {
    return FalseAlarm.ofSum(height(j), runs, bandHz(), timeVariance);
  }

  /** Height above the background that wander and noise alone reach with {@code probability}. */
  double heightAt(double probability) {
    return new BrentSolver(1e-9)
        .solve(
            200,
            z -> Math.log(FalseAlarm.ofSum(z, runs, bandHz(), timeVariance) / probability),
            runs,
            runs + 700);
  }

  private double bandHz() {
    return grid.stepHz() * grid.count();
  }

  private double height(int j) {
    return strength[j] / background[j];
  }

  /** The white steps of a run, jumps left out. */
  private static Series steadySteps(RunBackground background) {
    double[] residuals = background.fit().residuals();
    double[] seconds = background.stepSeconds();
    double limit = JUMP * RobustScale.of(residuals);
    int[] steady =
        IntStream.range(0, residuals.length)
            .filter(i -> limit == 0 || Math.abs(residuals[i]) <= limit)
            .toArray();
    return Series.of(
        Arrays.stream(steady).mapToDouble(i -> seconds[i]).toArray(),
        Arrays.stream(steady).mapToDouble(i -> residuals[i]).toArray());
  }

  private static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElse(0);
  }
}
