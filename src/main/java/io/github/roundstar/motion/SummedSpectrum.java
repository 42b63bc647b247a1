package io.github.roundstar.motion;

import io.github.roundstar.signal.FalseAlarm;
import io.github.roundstar.signal.FrequencyGrid;
import io.github.roundstar.signal.Periodogram;
import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.signal.Series;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoublePredicate;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.GammaDistribution;

/**
 * How strongly each trial frequency stands out of wander and noise, all runs together.
 *
 * <p>Each run's white residuals give a floating-mean periodogram with power p; - (n - 3) / 2 ln(1 -
 * p) is half of a chi-square of two degrees of freedom where only wander and noise are. The runs
 * are summed without regard to phase, which a slew loses. What the fitted wander and noise leave of
 * a slope in the spectrum, a coloured seeing for one, is divided out by {@link LocalBackground},
 * and what unsteady lines leave around them by {@link Skirts}.
 */
final class SummedSpectrum {
  /** Trial frequencies per resolution element 1 / T. */
  static final int OVERSAMPLING = 6;

  /**
   * A gear turns smoothly; a knock, a gust or a correction that the log does not show does not.
   * White steps beyond this many robust standard deviations do not take part in the search.
   */
  private static final double JUMP = 4;

  /** Upper bound on trial frequencies, so that no log, however long, exhausts the memory. */
  private static final int MOST_FREQUENCIES = 1 << 21;

  private final FrequencyGrid grid;
  private final Map<AxisRun, Periodogram> periodograms;
  private final double[] strength;
  private final double[] background;
  private final int runs;
  private final double timeVariance;

  private SummedSpectrum(
      FrequencyGrid grid,
      Map<AxisRun, Periodogram> periodograms,
      double[] strength,
      double[] background,
      int runs,
      double timeVariance) {
    this.grid = grid;
    this.periodograms = periodograms;
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

  /**
   * Sums the runs.
   *
   * @param backgrounds the runs, lines found so far taken out
   * @param grid trial frequencies
   * @param lines frequencies of those lines, whose skirts count as background [Hz]
   */
  static SummedSpectrum of(
      List<RunBackground> backgrounds, FrequencyGrid grid, List<Double> lines) {
    return of(backgrounds, grid, lines, Map.of());
  }

  /** The same runs at the same frequencies with other lines taken out. */
  SummedSpectrum after(List<RunBackground> backgrounds, List<Double> lines) {
    return of(backgrounds, grid, lines, periodograms);
  }

  private static SummedSpectrum of(
      List<RunBackground> backgrounds,
      FrequencyGrid grid,
      List<Double> lines,
      Map<AxisRun, Periodogram> before) {
    double[] strength = new double[grid.count()];
    double timeVariance = 0;
    // A run stays the same object throughout a search: no need to compare what is in it.
    Map<AxisRun, Periodogram> periodograms = new IdentityHashMap<>();
    for (RunBackground background : backgrounds) {
      double[] seconds = background.stepSeconds();
      double[] steady = withoutJumps(background.fit().residuals());
      Periodogram known = before.get(background.run());
      Periodogram periodogram =
          known == null
              ? Periodogram.of(Series.of(seconds, steady), grid)
              : known.withValues(steady);
      periodograms.put(background.run(), periodogram);
      double half = (background.fit().degreesOfFreedom() - 3) / 2.0;
      for (int j = 0; j < strength.length; j++) {
        strength[j] -= half * Math.log1p(-periodogram.power(j));
      }
      timeVariance += variance(seconds) / backgrounds.size();
    }
    double plainMedian =
        new GammaDistribution(backgrounds.size(), 1).inverseCumulativeProbability(0.5);
    double[] background = LocalBackground.of(strength, grid, plainMedian);
    Skirts.raise(background, strength, grid, plainMedian, lines);
    return new SummedSpectrum(
        grid, periodograms, strength, background, backgrounds.size(), timeVariance);
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
      if ((best < 0 || height(j) > height(best)) && eligible.test(grid.hertz(j))) {
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

  /**
   * Height above the background that wander and noise alone reach with {@code probability} in a run
   * that is looked at by itself.
   */
  double heightOfOneRunAt(double probability) {
    return new BrentSolver(1e-9)
        .solve(
            200,
            z -> Math.log(FalseAlarm.ofSum(z, 1, bandHz(), timeVariance) / probability),
            1,
            700);
  }

  private double bandHz() {
    return grid.stepHz() * grid.count();
  }

  private double height(int j) {
    return strength[j] / background[j];
  }

  /** White steps with zero, which wander and noise make them on average, in place of jumps. */
  private static double[] withoutJumps(double[] residuals) {
    double limit = JUMP * RobustScale.of(residuals);
    return Arrays.stream(residuals)
        .map(step -> limit > 0 && Math.abs(step) > limit ? 0 : step)
        .toArray();
  }

  private static double variance(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElse(0);
  }
}
