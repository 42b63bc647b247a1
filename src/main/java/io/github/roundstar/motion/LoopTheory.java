package io.github.roundstar.motion;

/**
 * What a plain proportional loop makes of noise, wander and drift: x[n+1] = x[n] + d[n] - g (x[n] +
 * w[n]) with white measurement noise w of variance R and motion d from frame to frame.
 *
 * <p>Closed forms of a first-order linear recursion; stable for 0 &lt; g &lt; 2.
 *
 * @see "Astrom &amp; Wittenmark, Computer-Controlled Systems; Muth (1960), J. Am. Stat. Assoc. 55,
 *     299, for the best gain"
 */
public final class LoopTheory {
  private LoopTheory() {}

  /**
   * Mean square of the star's motion that the loop makes out of measurement noise alone, over the
   * noise's: g / (2 - g); infinite when the loop is not stable.
   */
  public static double noiseAmplification(double gain) {
    return stable(gain) ? gain / (2 - gain) : Double.POSITIVE_INFINITY;
  }

  /**
   * Variance of the star's motion under wander and noise: (q + g^2 R) / (g (2 - g)).
   *
   * @param wanderVariance q, what the motion wanders from frame to frame, squared
   * @param noiseVariance R
   */
  public static double motionVariance(double gain, double wanderVariance, double noiseVariance) {
    return stable(gain)
        ? (wanderVariance + gain * gain * noiseVariance) / (gain * (2 - gain))
        : Double.POSITIVE_INFINITY;
  }

  /** Lag-1 autocorrelation of the logged offsets under wander and noise. */
  public static double lag1(double gain, double wanderVariance, double noiseVariance) {
    double motion = motionVariance(gain, wanderVariance, noiseVariance);
    return ((1 - gain) * motion - gain * noiseVariance) / (motion + noiseVariance);
  }

  /** Mean offset that lets a steady drift through: the drift per frame over the gain. */
  public static double rampLag(double gain, double driftPerFrame) {
    return driftPerFrame / gain;
  }

  /**
   * Share of a sinusoid's amplitude that the loop lets through.
   *
   * @param framesPerPeriod period in frames
   */
  public static double sinusoidShare(double gain, double framesPerPeriod) {
    double angle = 2 * Math.PI / framesPerPeriod;
    double kept = 1 - gain;
    return 2 * Math.sin(angle / 2) / Math.sqrt(1 - 2 * kept * Math.cos(angle) + kept * kept);
  }

  /** The gain with the least motion under wander and noise: the steady Kalman gain. */
  public static double bestGain(double wanderVariance, double noiseVariance) {
    double q = wanderVariance;
    return (-q + Math.sqrt(q * q + 4 * q * noiseVariance)) / (2 * noiseVariance);
  }

  private static boolean stable(double gain) {
    return gain > 0 && gain < 2;
  }
}
