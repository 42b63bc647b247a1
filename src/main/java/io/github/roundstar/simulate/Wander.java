package io.github.roundstar.simulate;

/** A random walk and its exact exposure averages. */
final class Wander {
  private final NoiseStream noise;
  private final double arcsecPerRootSecond;
  private double now;

  Wander(NoiseStream noise, double arcsecPerRootSecond) {
    this.noise = noise;
    this.arcsecPerRootSecond = arcsecPerRootSecond;
  }

  /** Goes on without looking. */
  void skip(double seconds) {
    now += arcsecPerRootSecond * StrictMath.sqrt(seconds) * noise.gaussian();
  }

  /**
   * Goes on and averages: given both ends, the mean of a random walk lies about their middle with a
   * twelfth of the walk's variance.
   */
  double mean(double seconds) {
    double step = arcsecPerRootSecond * StrictMath.sqrt(seconds);
    double move = step * noise.gaussian();
    double mean = now + move / 2 + step * noise.gaussian() / StrictMath.sqrt(12);
    now += move;
    return mean;
  }
}
