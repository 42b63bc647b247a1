package io.github.roundstar.signal;

import java.util.Arrays;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * Lomb-Scargle periodogram with a floating mean: at each frequency of an even grid, the share of
 * the variance that the best sinusoid beside a constant explains.
 *
 * <p>All frequencies come from three FFTs by {@link Extirpolation}, in time n + N log N, and agree
 * with direct sums to better than 1e-7. Where cosine, sine and constant are hard to tell apart
 * (periods well beyond the span of the series) the direct sums themselves are taken.
 *
 * <ul>
 *   <li>frequency 0, or a sinusoid the times cannot tell from a constant, or equal values: power
 *       and coefficients 0;
 *   <li>evenly sampled times at half the sampling frequency: also 0, since only one of cosine and
 *       sine shows there.
 * </ul>
 *
 * @see "Zechmeister &amp; K&uuml;rster (2009), A&amp;A 496, 577"
 * @see "Press &amp; Rybicki (1989), ApJ 338, 277"
 */
public final class Periodogram {
  /** Determinant below which rounding of the fast sums would show in the power. */
  private static final double DIRECT_BELOW = 1e-4;

  private final FloatingSinusoid samples;
  private final FrequencyGrid grid;
  private final double[] power;
  private final double[] cosine;
  private final double[] sine;
  private final double[][] once;
  private final double[][] twice;

  private Periodogram(
      FloatingSinusoid samples, FrequencyGrid grid, double[][] once, double[][] twice) {
    this.samples = samples;
    this.grid = grid;
    this.once = once;
    this.twice = twice;
    this.power = new double[grid.count()];
    this.cosine = new double[grid.count()];
    this.sine = new double[grid.count()];
    if (samples.variance > 0) {
      double[][] valued = sums(samples, grid, 1, samples.values);
      for (int j = 0; j < grid.count(); j++) {
        put(j, moments(j, valued));
      }
    }
  }

  /**
   * Of samples with equal weights.
   *
   * @param series at least one sample
   */
  public static Periodogram of(Series series, FrequencyGrid grid) {
    double[] weights = new double[series.size()];
    Arrays.fill(weights, 1);
    return weighted(series, weights, grid);
  }

  /**
   * Of samples with weights of their own, such as one over the variance of each.
   *
   * @param series at least one sample
   * @param weights one per sample, none negative, not all zero; only their ratios matter
   */
  public static Periodogram weighted(Series series, double[] weights, FrequencyGrid grid) {
    Check.atLeast("number of samples", series.size(), 1);
    Check.sameLength("weights", weights, series.size());
    FloatingSinusoid samples = new FloatingSinusoid(series, weights);
    double[] ones = new double[series.size()];
    Arrays.fill(ones, 1);
    return new Periodogram(
        samples, grid, sums(samples, grid, 1, ones), sums(samples, grid, 2, ones));
  }

  /**
   * Of other values at the same times, with the same weights and frequencies: a third of the work.
   *
   * @param values one per time
   */
  public Periodogram withValues(double[] values) {
    Check.sameLength("values", values, samples.seconds.length);
    return new Periodogram(new FloatingSinusoid(samples, values), grid, once, twice);
  }

  /** Weighted sums of values times cosine and sine at {@code multiple} times every frequency. */
  private static double[][] sums(
      FloatingSinusoid samples, FrequencyGrid grid, int multiple, double[] values) {
    int n = samples.seconds.length;
    double[] turns = new double[n];
    double[][] amplitudes = new double[2][n];
    double middleHz = multiple * grid.hertz(grid.count() / 2);
    for (int i = 0; i < n; i++) {
      turns[i] = multiple * grid.stepHz() * samples.seconds[i];
      double angle = FloatingSinusoid.angle(middleHz, samples.seconds[i]);
      double weighted = samples.weights[i] * values[i];
      amplitudes[0][i] = weighted * Math.cos(angle);
      amplitudes[1][i] = weighted * Math.sin(angle);
    }
    return new Extirpolation(grid.count()).sums(turns, amplitudes);
  }

  private Moments moments(int j, double[][] valued) {
    double c = once[0][j];
    double s = once[1][j];
    return new Moments(
        c,
        s,
        0.5 * (1 + twice[0][j]) - c * c,
        0.5 * (1 - twice[0][j]) - s * s,
        0.5 * twice[1][j] - c * s,
        valued[0][j],
        valued[1][j]);
  }

  private void put(int j, Moments moments) {
    Sinusoid fit =
        moments.determinant() < DIRECT_BELOW
            ? samples.at(grid.hertz(j))
            : samples.solved(grid.hertz(j), moments);
    power[j] = fit.power();
    cosine[j] = fit.cosine();
    sine[j] = fit.sine();
  }

  /** Number of frequencies. */
  public int size() {
    return power.length;
  }

  /** Frequency {@code j} [Hz]. */
  public double frequencyHz(int j) {
    return grid.hertz(j);
  }

  /** Explained share of the variance at frequency {@code j}, 0 to 1. */
  public double power(int j) {
    return power[j];
  }

  /** Coefficient of cos(2&pi;ft), t in the time of the series, unit of the values. */
  public double cosine(int j) {
    return cosine[j];
  }

  /** Coefficient of sin(2&pi;ft). */
  public double sine(int j) {
    return sine[j];
  }

  /** Half of peak to peak of the best sinusoid at frequency {@code j}, unit of the values. */
  public double amplitude(int j) {
    return Math.hypot(cosine[j], sine[j]);
  }

  /** The best sinusoid at any frequency, by direct sums over the samples. */
  public Sinusoid direct(double frequencyHz) {
    return samples.at(frequencyHz);
  }

  /** Index of the highest power from {@code from} up to but not including {@code to}. */
  public int highest(int from, int to) {
    int best = from;
    for (int j = from + 1; j < to; j++) {
      best = power[j] > power[best] ? j : best;
    }
    return best;
  }

  /** The highest peak of all, refined. */
  public Sinusoid peak() {
    return refined(highest(0, size()));
  }

  /** The best sinusoid between the neighbours of frequency {@code j}, off the grid. */
  public Sinusoid refined(int j) {
    double low = grid.hertz(Math.max(0, j - 1));
    double high = grid.hertz(Math.min(size() - 1, j + 1));
    if (!(low < high)) {
      return direct(low);
    }
    double best =
        new BrentOptimizer(1e-15, 1e-6 * grid.stepHz())
            .optimize(
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(frequency -> direct(frequency).power()),
                new SearchInterval(low, high, grid.hertz(j)),
                new MaxEval(200))
            .getPoint();
    return direct(best);
  }
}
