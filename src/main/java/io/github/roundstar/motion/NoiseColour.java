package io.github.roundstar.motion;

import java.util.List;

/**
 * How much the noise of a frame resembles that of the frame before, and a second look at its size:
 * both from differences of the motion with the corrections taken out, drift and gears fitted away.
 *
 * <p>In the differences d of noise with autocorrelation r^k on a random walk, the covariance at lag
 * 2 is r times that at lag 1, whatever the walk does.
 *
 * @see "von Neumann (1941), Ann. Math. Stat. 12, 367, for noise by differences; Gasser, Sroka and
 *     Jennen-Steinmetz (1986), Biometrika 73, 625, for second ones"
 */
public final class NoiseColour {
  /** Steps longer or shorter than the cadence by more than this share are left out. */
  private static final double EVEN = 0.25;

  /** Covariances below this many standard errors tell nothing. */
  private static final double TELLING = 4;

  private final double[] left;
  private final boolean[] breaks;
  private final double wanderPerStep;

  private NoiseColour(double[] left, boolean[] breaks, double wanderPerStep) {
    this.left = left;
    this.breaks = breaks;
    this.wanderPerStep = wanderPerStep;
  }

  /** Of one axis. */
  static NoiseColour of(JoltFree quiet, double cadenceSeconds) {
    MotionSeries motion = quiet.motion();
    double[] left = quiet.left(motion, quiet.columns());
    boolean[] breaks = motion.startsPiece();
    for (int i = 0; i < left.length; i++) {
      double step = i == 0 ? 0 : motion.seconds(i) - motion.seconds(i - 1);
      breaks[i] |= Math.abs(step - cadenceSeconds) > EVEN * cadenceSeconds;
    }
    double wander =
        quiet.wanderNoise().noiseVariance() * quiet.wanderNoise().ratioPerSecond() * cadenceSeconds;
    return new NoiseColour(left, breaks, wander);
  }

  /** Of a run's axis. */
  public static NoiseColour of(AxisMotion motion) {
    return of(motion.jolts(), motion.run().cadenceSeconds());
  }

  /** Autocorrelation of the noise from frame to frame, both axes together. */
  public static Answer<Double> lag1(List<NoiseColour> axes) {
    double weights = 0;
    double sum = 0;
    for (NoiseColour axis : axes) {
      double zero = axis.covariance(0);
      double one = axis.covariance(1);
      double error = zero / Math.sqrt(Math.max(1, axis.left.length));
      if (-one > TELLING * error) {
        double weight = one * one / (error * error);
        weights += weight;
        sum += weight * axis.covariance(2) / one;
      }
    }
    return weights == 0
        ? Answer.none("the noise of a frame is too small beside the motion to show how it goes on")
        : Answer.of(Math.max(-1, Math.min(1, sum / weights)));
  }

  /**
   * Standard deviation of the noise by second differences, the fitted wander's part taken off, in
   * the unit of the motion; 0 where wander explains them all, NaN without three even frames in a
   * row.
   */
  public double bySecondDifferences() {
    double squares = 0;
    int count = 0;
    for (int i = 2; i < left.length; i++) {
      if (!breaks[i] && !breaks[i - 1]) {
        double second = left[i] - 2 * left[i - 1] + left[i - 2];
        squares += second * second;
        count++;
      }
    }
    // Second differences of noise have six times its variance, those of a walk twice its step's.
    return count == 0
        ? Double.NaN
        : Math.sqrt(Math.max(0, (squares / count - 2 * wanderPerStep) / 6));
  }

  /** Mean product of differences {@code lag} frames apart. */
  private double covariance(int lag) {
    double sum = 0;
    int count = 0;
    int unbroken = 0;
    for (int i = 0; i < left.length; i++) {
      unbroken = breaks[i] ? 0 : unbroken + 1;
      if (unbroken > lag) {
        sum += (left[i] - left[i - 1]) * (left[i - lag] - left[i - lag - 1]);
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }
}
