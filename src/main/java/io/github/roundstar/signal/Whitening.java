package io.github.roundstar.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Turns a series that wanders at random and carries white noise into one of independent steps of
 * equal variance.
 *
 * <p>The model is a random walk of variance {@code q} per second, seen at times t with white noise
 * of variance {@code R}: the local level model. Its Kalman filter in units of R, with ratio = q /
 * R, gives one-step prediction errors which, divided by their standard deviation, are white. The
 * filter is linear, so regressors that pass through it keep their meaning: ordinary least squares
 * of whitened data on whitened regressors is generalised least squares.
 *
 * <p>The noise may have a memory: its correlation falls with time t as exp(-t / memory). A sample
 * is then the level and the noise without a rest, so one number is still all that the filter need
 * know: the level, from which follows the noise.
 *
 * <p>A series may come in pieces whose levels have nothing to do with each other. Each piece starts
 * with an unknown level, so its first sample yields no step.
 *
 * @see "Durbin &amp; Koopman, Time Series Analysis by State Space Methods, 2nd ed. (2012), sections
 *     2.2, 2.9, 6.2; for noise with a memory: Bryson &amp; Johansen (1965), IEEE Trans. Autom.
 *     Control 10, 4 (from memory)"
 */
public final class Whitening {
  private static final double LARGE = 1e200;

  private final boolean[] startsPiece;
  private final double[] remembered;
  private final double[] gain;
  private final double[] scale;
  private final int steps;
  private final double logDeterminant;

  private Whitening(
      boolean[] startsPiece,
      double[] remembered,
      double[] gain,
      double[] scale,
      int steps,
      double logDeterminant) {
    this.startsPiece = startsPiece;
    this.remembered = remembered;
    this.gain = gain;
    this.scale = scale;
    this.steps = steps;
    this.logDeterminant = logDeterminant;
  }

  /**
   * The filter for given times and white noise.
   *
   * @param seconds ascending times, n of them [s]
   * @param startsPiece n flags; the first sample starts a piece in any case
   * @param ratioPerSecond wander over noise, q / R [1/s, &ge; 0]
   * @return the filter
   */
  public static Whitening of(double[] seconds, boolean[] startsPiece, double ratioPerSecond) {
    return of(seconds, startsPiece, ratioPerSecond, 0);
  }

  /**
   * The filter for given times.
   *
   * @param seconds ascending times, n of them [s]
   * @param startsPiece n flags; the first sample starts a piece in any case
   * @param ratioPerSecond wander over noise, q / R [1/s, &ge; 0]
   * @param memorySeconds time in which the noise forgets all but 1/e of itself; 0 for white noise
   * @return the filter
   */
  public static Whitening of(
      double[] seconds, boolean[] startsPiece, double ratioPerSecond, double memorySeconds) {
    int n = seconds.length;
    boolean[] starts = startsPiece.clone();
    double[] remembered = new double[memorySeconds > 0 ? n : 0];
    double[] gain = new double[n];
    double[] scale = new double[n];
    int steps = 0;
    double logDeterminant = 0;
    double product = 1;
    double variance = 1;
    double predicted = Double.NaN;
    double step = Double.NaN;
    double share = 0;
    double total = 0;
    double factor = 0;
    double unit = 0;
    double rest = 0;
    for (int i = 0; i < n; i++) {
      if (i == 0 || starts[i]) {
        starts[i] = true;
        gain[i] = 1;
        variance = 1;
        continue;
      }
      double walk = ratioPerSecond * (seconds[i] - seconds[i - 1]);
      // An even cadence soon brings the filter to rest: the same numbers again.
      if (variance + walk != predicted || seconds[i] - seconds[i - 1] != step) {
        step = seconds[i] - seconds[i - 1];
        predicted = variance + walk;
        share = remembered(step, memorySeconds);
        double forgotten = 1 - share;
        double renewed = 1 - share * share;
        total = forgotten * forgotten * variance + walk + renewed;
        factor = (forgotten * variance + walk) / total;
        unit = 1 / Math.sqrt(total);
        rest = (predicted * renewed + share * share * variance * walk) / total;
      }
      variance = rest;
      if (memorySeconds > 0) {
        remembered[i] = share;
      }
      gain[i] = factor;
      scale[i] = unit;
      // One logarithm for many factors, before their product grows out of range.
      product *= total;
      if (product > LARGE || product < 1 / LARGE) {
        logDeterminant += Math.log(product);
        product = 1;
      }
      steps++;
    }
    logDeterminant += Math.log(product);
    return new Whitening(starts, remembered, gain, scale, steps, logDeterminant);
  }

  /** Share of noise with such a memory that is still there after so long. */
  static double remembered(double afterSeconds, double memorySeconds) {
    return memorySeconds > 0 ? Math.exp(-afterSeconds / memorySeconds) : 0;
  }

  /** Number of white steps: samples less pieces. */
  public int size() {
    return steps;
  }

  /** The samples that the white steps belong to. */
  public int[] stepSamples() {
    return IntStream.range(0, samples()).filter(i -> !startsPiece[i]).toArray();
  }

  /** Number of samples. */
  int samples() {
    return gain.length;
  }

  /** Whether sample {@code i} starts a piece; the first one always does. */
  boolean startsPiece(int i) {
    return startsPiece[i];
  }

  /** Whether the noise has a memory anywhere. */
  boolean remembers() {
    return Arrays.stream(remembered).anyMatch(share -> share > 0);
  }

  /** Share of the noise at the sample before that is still there at sample {@code i}. */
  private double remembered(int i) {
    return remembered.length == 0 ? 0 : remembered[i];
  }

  /** Share of its prediction error that the level takes over at sample {@code i}. */
  double gain(int i) {
    return gain[i];
  }

  /** One over the standard deviation of the prediction error at sample {@code i}, in units of R. */
  double scale(int i) {
    return scale[i];
  }

  /** Logarithm of the determinant of the steps' covariance in units of R. */
  public double logDeterminant() {
    return logDeterminant;
  }

  /**
   * Logarithm of the likelihood of series that went through this filter, the noise's variance
   * fitted too, but for a constant that only their number decides.
   *
   * @param sumOfSquares of white steps, less what a model explains of them
   */
  public double logLikelihood(double sumOfSquares) {
    double steps = size();
    return -0.5 * (steps * Math.log(sumOfSquares / steps) + logDeterminant);
  }

  /**
   * A whitened column.
   *
   * @param column n values, data or regressor
   * @return {@link #size()} values in the unit of the column; for data that follow the model, white
   *     with variance R
   */
  public double[] apply(double[] column) {
    double[] white = new double[steps];
    apply(column, white);
    return white;
  }

  private void apply(double[] column, double[] white) {
    double level = 0;
    int step = 0;
    for (int i = 0; i < column.length; i++) {
      if (startsPiece[i]) {
        level = column[i];
        continue;
      }
      double share = remembered(i);
      double factor = gain[i];
      double news = column[i] - share * column[i - 1];
      white[step++] = (news - (1 - share) * level) * scale[i];
      level = (1 - factor * (1 - share)) * level + factor * news;
    }
  }

  /** Whitened columns, in the same order. */
  public double[][] apply(double[][] columns) {
    double[][] white = new double[columns.length][steps];
    apply(columns, white);
    return white;
  }

  /** The same into columns of {@link #size()} values. */
  public void apply(double[][] columns, double[][] white) {
    int j = 0;
    for (; j + 3 < columns.length; j += 4) {
      applyToFour(columns, white, j);
    }
    for (; j < columns.length; j++) {
      apply(columns[j], white[j]);
    }
  }

  /** Four columns at a time: one alone would wait for each step of its recursion. */
  private void applyToFour(double[][] columns, double[][] white, int j) {
    double[] in0 = columns[j];
    double[] in1 = columns[j + 1];
    double[] in2 = columns[j + 2];
    double[] in3 = columns[j + 3];
    double[] out0 = white[j];
    double[] out1 = white[j + 1];
    double[] out2 = white[j + 2];
    double[] out3 = white[j + 3];
    double level0 = 0;
    double level1 = 0;
    double level2 = 0;
    double level3 = 0;
    int step = 0;
    for (int i = 0; i < in0.length; i++) {
      if (startsPiece[i]) {
        level0 = in0[i];
        level1 = in1[i];
        level2 = in2[i];
        level3 = in3[i];
        continue;
      }
      double share = remembered(i);
      double forgotten = 1 - share;
      double factor = gain[i];
      double keep = 1 - factor * forgotten;
      double unit = scale[i];
      double news0 = in0[i] - share * in0[i - 1];
      double news1 = in1[i] - share * in1[i - 1];
      double news2 = in2[i] - share * in2[i - 1];
      double news3 = in3[i] - share * in3[i - 1];
      out0[step] = (news0 - forgotten * level0) * unit;
      out1[step] = (news1 - forgotten * level1) * unit;
      out2[step] = (news2 - forgotten * level2) * unit;
      out3[step++] = (news3 - forgotten * level3) * unit;
      level0 = keep * level0 + factor * news0;
      level1 = keep * level1 + factor * news1;
      level2 = keep * level2 + factor * news2;
      level3 = keep * level3 + factor * news3;
    }
  }
}
