package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.Random;

/**
 * Motions made of a drift, sinusoids, a random walk and white noise: nothing else, so that the
 * truth is plain.
 */
final class PlainNights {
  static final double CADENCE_SECONDS = 3;

  private final Random random;

  PlainNights(long seed) {
    random = new Random(seed);
  }

  /**
   * One run.
   *
   * @param id number of the run
   * @param frames number of frames, irregular by a fifth of a second
   * @param noiseArcsec standard deviation of the white noise
   * @param wander standard deviation of the walk after one second [arcsec]
   * @param driftArcsecPerMinute drift
   * @param shiftSeconds how late the sinusoids are
   * @param sinusoids period [s], amplitude [arcsec], phase [rad] of each
   */
  AxisRun run(
      int id,
      int frames,
      double noiseArcsec,
      double wander,
      double driftArcsecPerMinute,
      double shiftSeconds,
      double[]... sinusoids) {
    double[] seconds = new double[frames];
    double[] arcsec = new double[frames];
    boolean[] starts = new boolean[frames];
    double walk = 0;
    for (int i = 0; i < frames; i++) {
      seconds[i] = CADENCE_SECONDS * i + 0.2 * (random.nextDouble() - 0.5);
      double step = i == 0 ? 0 : seconds[i] - seconds[i - 1];
      walk += wander * Math.sqrt(step) * random.nextGaussian();
      arcsec[i] =
          walk + noiseArcsec * random.nextGaussian() + driftArcsecPerMinute / 60 * seconds[i];
      for (double[] s : sinusoids) {
        arcsec[i] += s[1] * Math.sin(2 * Math.PI * (seconds[i] - shiftSeconds) / s[0] + s[2]);
      }
    }
    return new AxisRun(
        id, new MotionSeries(seconds, arcsec, starts), 0, CADENCE_SECONDS, 1, seconds[0]);
  }

  static double relativeError(Estimate estimate, double truth) {
    return Math.abs(estimate.value() / truth - 1);
  }
}
