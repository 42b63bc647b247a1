package io.github.roundstar.diagnosis.exposures;

import java.util.function.IntPredicate;

/**
 * Motion of the star during an exposure: the covariance of its places with the correction that the
 * track demands, floored at zero.
 *
 * @param frames measured frames
 * @param ee variance east [arcsec2]
 * @param nn variance north [arcsec2]
 * @param en covariance [arcsec2]
 * @param sigma standard error of either part of the stretch's numerator, (nn - ee) / 2 and en
 * @param meanEast mean place east [arcsec]
 * @param meanNorth mean place north [arcsec]
 */
record WindowMotion(
    int frames, double ee, double nn, double en, double sigma, double meanEast, double meanNorth) {
  /** The motion over the frames from one index to another that are wanted. */
  static WindowMotion of(StarTrack track, int from, int to, IntPredicate wanted) {
    int n = 0;
    double east = 0;
    double north = 0;
    for (int i = from; i < to; i++) {
      if (wanted.test(i)) {
        n++;
        east += track.ra(i);
        north += track.dec(i);
      }
    }
    if (n < 2) {
      return new WindowMotion(n, 0, 0, 0, 0, east, north);
    }
    east /= n;
    north /= n;
    double ee = 0;
    double nn = 0;
    double en = 0;
    for (int i = from; i < to; i++) {
      if (wanted.test(i)) {
        double x = track.ra(i) - east;
        double y = track.dec(i) - north;
        ee += x * x / n;
        nn += y * y / n;
        en += x * y / n;
      }
    }
    return corrected(track, n, ee, nn, en, east, north);
  }

  private static WindowMotion corrected(
      StarTrack track, int n, double ee, double nn, double en, double east, double north) {
    StarTrack.Noise ra = track.raNoise();
    StarTrack.Noise dec = track.decNoise();
    double share = (n - 1.0) / n;
    double east2 = Math.max(0, ee + share * ra.addedVariance());
    double north2 = Math.max(0, nn + share * dec.addedVariance());
    double most = Math.sqrt(east2 * north2);
    double mixed = Math.max(-most, Math.min(most, en));
    double ofEast = sampling(east2, ra, n);
    double ofNorth = sampling(north2, dec, n);
    return new WindowMotion(n, east2, north2, mixed, Math.sqrt(ofEast + ofNorth) / 2, east, north);
  }

  /**
   * Variance of a corrected variance: that of the noise's own sample variance and of its product
   * with the motion, and of the noise that was assumed.
   */
  private static double sampling(double motion, StarTrack.Noise noise, int n) {
    double v = noise.placeVariance();
    return (2 * v * v + 4 * motion * v) / n + noise.sigmaOfAdded() * noise.sigmaOfAdded();
  }
}
