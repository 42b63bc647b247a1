package io.github.roundstar.simulate;

/**
 * A stationary Ornstein-Uhlenbeck process and its exact averages.
 *
 * @see "Gillespie (1996), Phys. Rev. E 54, 2084, on the joint law of the process and its integral"
 */
final class Relaxation {
  private final double variance;
  private final double timeConstantSeconds;
  private final NoiseStream noise;
  private double now;

  /** Starts anywhere in its stationary law. */
  Relaxation(double variance, double timeConstantSeconds, NoiseStream noise) {
    this.variance = variance;
    this.timeConstantSeconds = timeConstantSeconds;
    this.noise = noise;
    this.now = StrictMath.sqrt(variance) * noise.gaussian();
  }

  /** Goes on; returns the new value. */
  double skip(double seconds) {
    double kept = StrictMath.exp(-seconds / timeConstantSeconds);
    now = now * kept + StrictMath.sqrt(variance * (1 - kept * kept)) * noise.gaussian();
    return now;
  }

  /** Goes on and averages over {@code seconds} &gt; 0. */
  double mean(double seconds) {
    double kept = StrictMath.exp(-seconds / timeConstantSeconds);
    double lost = 1 - kept;
    double endVariance = variance * (1 - kept * kept);
    double areaVariance =
        2
            * variance
            * timeConstantSeconds
            * (seconds
                - 2 * timeConstantSeconds * lost
                + timeConstantSeconds * lost * (1 + kept) / 2);
    double covariance = variance * timeConstantSeconds * lost * lost;
    double first = noise.gaussian();
    double second = noise.gaussian();
    double area = now * timeConstantSeconds * lost;
    now *= kept;
    if (endVariance > 0) {
      double end = StrictMath.sqrt(endVariance);
      double rest = Math.max(0, areaVariance - covariance * covariance / endVariance);
      now += end * first;
      area += covariance / end * first + StrictMath.sqrt(rest) * second;
    }
    return area / seconds;
  }
}
