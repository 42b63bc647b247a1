package io.github.roundstar.diagnosis.exposures;

import java.util.function.IntPredicate;

/**
 * Second moments of the core of a star image, under the Gaussian weight that star shapes are
 * measured with. The image is the mean of round images at all places that the star had during the
 * exposure; an excursion of a few seconds makes a faint wing, which raises plain moments and not
 * the core.
 *
 * <p>A Gaussian of covariance S at p, under a weight of covariance M at c, keeps the covariance K =
 * (1/S + 1/M)^-1, lies at c + M (S + M)^-1 (p - c), and weighs exp(-(p - c)' (S + M)^-1 (p - c) /
 * 2); the weight becomes twice the weighted moments until it stays, as in the measurement.
 *
 * @param ee variance east [arcsec2]
 * @param nn variance north [arcsec2]
 * @param en covariance [arcsec2]
 * @see "Bernstein &amp; Jarvis (2002), AJ 123, 583; Hirata &amp; Seljak (2003), MNRAS 343, 459"
 */
record CoreShape(double ee, double nn, double en) {
  private static final int MOST_ITERATIONS = 200;
  private static final double CONVERGED = 1e-7;

  /**
   * From so small a change on a pass goes twice as far: the weight halves its distance from where
   * it stays with each one, for images that are Gaussian exactly.
   */
  private static final double NEAR = 0.01;

  /** Taking the noise off may not leave less than this share of the round image. */
  private static final double LEAST_SHARE = 0.15;

  /**
   * The core over some frames of a track.
   *
   * @param wanted which frames between the two indices count
   * @param turn what the field's turn adds, as (ee, nn, en) [arcsec2]
   * @param round variance of the round image per axis [arcsec2]
   */
  static CoreShape of(
      StarTrack track, int from, int to, IntPredicate wanted, double[] turn, double round) {
    double least = LEAST_SHARE * round;
    double[] between = between(track, from, to, wanted);
    double addedEast = turn[0] + between[0];
    double addedNorth = turn[1] + between[1];
    double see = Math.max(least, round + track.raNoise().addedVariance()) + addedEast;
    double snn = Math.max(least, round + track.decNoise().addedVariance()) + addedNorth;
    double sen = turn[2];
    WindowMotion motion = WindowMotion.of(track, from, to, wanted);
    CoreShape weight =
        new CoreShape(
            round + motion.ee() + addedEast,
            round + motion.nn() + addedNorth,
            motion.en() + turn[2]);
    double east = motion.meanEast();
    double north = motion.meanNorth();
    int frames = motion.frames();
    if (frames < 2) {
      return weight;
    }
    double[] atEast = new double[frames];
    double[] atNorth = new double[frames];
    for (int i = from, k = 0; i < to; i++) {
      if (wanted.test(i)) {
        atEast[k] = track.ra(i);
        atNorth[k++] = track.dec(i);
      }
    }
    for (int pass = 0; pass < MOST_ITERATIONS; pass++) {
      // P = (S + M)^-1, and G = M P.
      double a = see + weight.ee;
      double b = sen + weight.en;
      double c = snn + weight.nn;
      double determinant = a * c - b * b;
      double pee = c / determinant;
      double pnn = a / determinant;
      double pen = -b / determinant;
      double gee = weight.ee * pee + weight.en * pen;
      double gen = weight.ee * pen + weight.en * pnn;
      double gne = weight.en * pee + weight.nn * pen;
      double gnn = weight.en * pen + weight.nn * pnn;
      double sum = 0;
      double mx = 0;
      double my = 0;
      double xx = 0;
      double yy = 0;
      double xy = 0;
      for (int k = 0; k < frames; k++) {
        double dx = atEast[k] - east;
        double dy = atNorth[k] - north;
        double w = Math.exp(-(pee * dx * dx + 2 * pen * dx * dy + pnn * dy * dy) / 2);
        double x = gee * dx + gen * dy;
        double y = gne * dx + gnn * dy;
        sum += w;
        mx += w * x;
        my += w * y;
        xx += w * x * x;
        yy += w * y * y;
        xy += w * x * y;
      }
      if (!(sum > 0)) {
        return weight;
      }
      mx /= sum;
      my /= sum;
      // K = G S, since (1/S + 1/M)^-1 = M (S + M)^-1 S.
      CoreShape next =
          new CoreShape(
              2 * (gee * see + gen * sen + xx / sum - mx * mx),
              2 * (gne * sen + gnn * snn + yy / sum - my * my),
              2 * (gee * sen + gen * snn + xy / sum - mx * my));
      if (!next.isShape()) {
        // A trail thousands of times as long as the image is wide: rounding ends the search.
        return weight;
      }
      east += 2 * mx;
      north += 2 * my;
      double change = Math.abs(next.ee - weight.ee) + Math.abs(next.nn - weight.nn);
      double size = next.ee + next.nn;
      if (change < CONVERGED * size) {
        return next;
      }
      CoreShape farther = next.beyond(weight);
      weight = change < NEAR * size && farther.isShape() ? farther : next;
    }
    return weight;
  }

  /**
   * What happens between frames: a pulse moves the star at once and the mount takes it back until
   * the next frame, so that it lies evenly over the pulse's length, of variance length^2 / 12
   * [arcsec2].
   */
  private static double[] between(StarTrack track, int from, int to, IntPredicate wanted) {
    double east = 0;
    double north = 0;
    int frames = 0;
    for (int i = from; i < to; i++) {
      if (wanted.test(i)) {
        east += track.raJump(i) * track.raJump(i);
        north += track.decJump(i) * track.decJump(i);
        frames++;
      }
    }
    double all = 12.0 * Math.max(1, frames);
    return new double[] {east / all, north / all};
  }

  private boolean isShape() {
    return ee > 0 && nn > 0 && ee * nn > en * en;
  }

  /** As far behind this one as it is from another. */
  private CoreShape beyond(CoreShape other) {
    return new CoreShape(2 * ee - other.ee, 2 * nn - other.nn, 2 * en - other.en);
  }
}
