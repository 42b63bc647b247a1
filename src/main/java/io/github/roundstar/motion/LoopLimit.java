package io.github.roundstar.motion;

/**
 * The best that any controller can do with a star that wanders in noise: to stand, at each frame,
 * where all frames before foretell. What is left is the one-step prediction error of the night's
 * own model, whose variance solves a Riccati equation.
 *
 * <p>State: the wander and, where the noise remembers, the noise; one number is measured, their
 * sum.
 *
 * @param model the model
 * @param motionArcsec2 variance of the star's motion at the next frame [arcsec^2]
 * @param gain share of the foretelling's error that the wander takes over
 * @param noiseGain share of it that the remembered noise takes over
 * @see "Kalman (1960), J. Basic Eng. 82, 35; Anderson &amp; Moore, Optimal Filtering (1979), ch. 4"
 */
public record LoopLimit(Model model, double motionArcsec2, double gain, double noiseGain) {
  private static final int MOST_STEPS = 100_000;
  private static final double CONVERGED = 1e-13;

  /**
   * Wander in noise.
   *
   * @param wanderArcsec2 what the wander's variance grows by from frame to frame [arcsec^2]
   * @param noiseArcsec2 variance of the noise [arcsec^2]
   * @param remembered share of the noise that the next frame still has, 0 to below 1
   */
  public record Model(double wanderArcsec2, double noiseArcsec2, double remembered) {}

  /** Solves the equation, by stepping the variance until it stays. */
  public static LoopLimit of(Model model) {
    double q = model.wanderArcsec2();
    double r = model.noiseArcsec2();
    double phi = model.remembered();
    if (!(q > 0) || !(r > 0)) {
      return new LoopLimit(model, Math.max(0, q), q > 0 ? 1 : 0, 0);
    }
    double renewed = (1 - phi * phi) * r;
    // Predicted covariance of (wander, noise).
    double a = (q + Math.sqrt(q * q + 4 * q * r)) / 2;
    double b = 0;
    double c = r;
    double gain = 0;
    double noiseGain = 0;
    for (int step = 0; step < MOST_STEPS; step++) {
      double s = a + 2 * b + c;
      gain = (a + b) / s;
      noiseGain = (b + c) / s;
      double filteredA = a - gain * (a + b);
      double filteredB = b - gain * (b + c);
      double filteredC = c - noiseGain * (b + c);
      double nextA = filteredA + q;
      double change = Math.abs(nextA - a) + Math.abs(phi * filteredB - b);
      a = nextA;
      b = phi * filteredB;
      c = phi * phi * filteredC + renewed;
      if (change < CONVERGED * (a + c)) {
        break;
      }
    }
    return new LoopLimit(model, a, gain, noiseGain);
  }

  /**
   * What a frame's error of the smoothed path shares with the frame before: the spectrum of that
   * error is the product of those of wander and noise over their sum, whose denominator has one
   * root.
   */
  static double smoothingMemory(Model model) {
    double q = model.wanderArcsec2();
    double phi = model.remembered();
    double s = (1 - phi * phi) * model.noiseArcsec2();
    // q |1 - phi z|^2 + s |1 - z|^2 = A - 2 B cos(w).
    double middle = q * (1 + phi * phi) + 2 * s;
    double side = q * phi + s;
    if (!(side > 0)) {
      return 0;
    }
    double half = middle / (2 * side);
    return half <= 1 ? 0.999 : 1 / (half + Math.sqrt(half * half - 1));
  }

  /**
   * How far the star is from where it was foretold.
   *
   * @param place where it was in each frame, without noise [arcsec]
   * @param noise what was measured on top [arcsec]
   */
  double[] errors(double[] place, double[] noise) {
    double[] errors = new double[place.length];
    double level = place.length == 0 ? 0 : place[0];
    double remembered = 0;
    for (int i = 0; i < errors.length; i++) {
      errors[i] = place[i] - level;
      double surprise = place[i] + noise[i] - level - remembered;
      level += gain * surprise;
      remembered = model.remembered() * (remembered + noiseGain * surprise);
    }
    return errors;
  }
}
