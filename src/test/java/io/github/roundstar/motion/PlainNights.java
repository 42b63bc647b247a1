package io.github.roundstar.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Motions made of a drift, sinusoids, a random walk and white noise: nothing else, so that the
 * truth is plain. Frames come every 3 s, irregular by a tenth of a second either way.
 *
 * @param frames number of frames
 * @param noiseArcsec standard deviation of the white noise
 * @param wander standard deviation of the walk after one second [arcsec]
 * @param driftArcsecPerMinute drift
 * @param shiftSeconds how late the sinusoids are
 * @param exposureSeconds guide exposure that averages the sinusoids
 * @param sinusoids what turns
 */
record PlainNights(
    int frames,
    double noiseArcsec,
    double wander,
    double driftArcsecPerMinute,
    double shiftSeconds,
    double exposureSeconds,
    List<Turning> sinusoids) {
  static final double CADENCE_SECONDS = 3;

  /** Two hours of usual noise, wander and drift without a sinusoid. */
  static final PlainNights USUAL = new PlainNights(2400, 0.45, 0.02, 0.3, 0, 0, List.of());

  /** The same with a worm of 479 s, 6 arcsec, and its second harmonic of 1 arcsec. */
  static final PlainNights WITH_WORM = USUAL.with(479, 6, 0.7).with(239.5, 1, 2);

  /**
   * A sinusoid.
   *
   * @param periodSeconds period
   * @param amplitudeArcsec half of peak to peak
   * @param phaseRad phase at time zero
   */
  record Turning(double periodSeconds, double amplitudeArcsec, double phaseRad) {
    /** Mean over an exposure around a time: the antiderivative's difference. */
    double at(double seconds, double exposureSeconds) {
      double rate = 2 * Math.PI / periodSeconds;
      double angle = rate * seconds + phaseRad;
      double half = rate * exposureSeconds / 2;
      return exposureSeconds == 0
          ? amplitudeArcsec * Math.sin(angle)
          : amplitudeArcsec * (Math.cos(angle - half) - Math.cos(angle + half)) / (2 * half);
    }
  }

  PlainNights frames(int number) {
    return new PlainNights(
        number,
        noiseArcsec,
        wander,
        driftArcsecPerMinute,
        shiftSeconds,
        exposureSeconds,
        sinusoids);
  }

  PlainNights noise(double arcsec) {
    return new PlainNights(
        frames, arcsec, wander, driftArcsecPerMinute, shiftSeconds, exposureSeconds, sinusoids);
  }

  PlainNights drift(double arcsecPerMinute) {
    return new PlainNights(
        frames, noiseArcsec, wander, arcsecPerMinute, shiftSeconds, exposureSeconds, sinusoids);
  }

  PlainNights late(double seconds) {
    return new PlainNights(
        frames, noiseArcsec, wander, driftArcsecPerMinute, seconds, exposureSeconds, sinusoids);
  }

  PlainNights exposure(double seconds) {
    return new PlainNights(
        frames, noiseArcsec, wander, driftArcsecPerMinute, shiftSeconds, seconds, sinusoids);
  }

  PlainNights with(double periodSeconds, double amplitudeArcsec, double phaseRad) {
    List<Turning> more = new ArrayList<>(sinusoids);
    more.add(new Turning(periodSeconds, amplitudeArcsec, phaseRad));
    return new PlainNights(
        frames, noiseArcsec, wander, driftArcsecPerMinute, shiftSeconds, exposureSeconds, more);
  }

  /** One run of such a night, the same for the same seed. */
  AxisRun run(int id, long seed) {
    Random random = new Random(seed);
    double[] seconds = new double[frames];
    double[] arcsec = new double[frames];
    double walk = 0;
    for (int i = 0; i < frames; i++) {
      seconds[i] = CADENCE_SECONDS * i + 0.2 * (random.nextDouble() - 0.5);
      double step = i == 0 ? 0 : seconds[i] - seconds[i - 1];
      walk += wander * Math.sqrt(step) * random.nextGaussian();
      arcsec[i] =
          walk + noiseArcsec * random.nextGaussian() + driftArcsecPerMinute / 60 * seconds[i];
      for (Turning turning : sinusoids) {
        arcsec[i] += turning.at(seconds[i] - shiftSeconds, exposureSeconds);
      }
    }
    return run(id, seconds, arcsec, new boolean[frames]);
  }

  /** The run with other motions or flags at the same exposure. */
  AxisRun run(int id, double[] seconds, double[] arcsec, boolean[] starts) {
    return new AxisRun(
        id,
        new MotionSeries(seconds, arcsec, starts),
        exposureSeconds,
        CADENCE_SECONDS,
        1,
        seconds.length == 0 ? 0 : seconds[0]);
  }
}
