package io.github.roundstar.motion;

import java.util.List;
import java.util.Optional;

/**
 * Jolts of one axis and how far they took the star.
 *
 * @param axis right ascension or declination
 * @param whole the motion, jolts and all
 * @param cosine from the unit of the motion to the sky
 * @param jolts what stood out
 */
record AxisJolts(Axis axis, MotionSeries whole, double cosine, List<Jolt> jolts) {
  /** Samples on either side of a passing shift that tell where the star would have been. */
  private static final int BESIDE = 4;

  static Optional<AxisJolts> of(Axis axis, AxisRun run, Optional<Response> response) {
    return response.map(r -> new AxisJolts(axis, run.motion(), run.cosine(), r.quiet().jolts()));
  }

  /** How far the star went, on the sky [arcsec]; of a passing shift its farthest place. */
  double sizeSky(Jolt jolt) {
    return cosine * (jolt.shape() == Jolt.Shape.LASTING ? jolt.sizeArcsec() : farthest(jolt));
  }

  /** Distance from the line between the means before and after. */
  private double farthest(Jolt jolt) {
    int before = Math.max(0, jolt.first() - BESIDE);
    int after = Math.min(whole.size(), jolt.last() + 1 + BESIDE);
    double from = before == jolt.first() ? Double.NaN : mean(before, jolt.first());
    double to = after == jolt.last() + 1 ? Double.NaN : mean(jolt.last() + 1, after);
    double start = Double.isNaN(from) ? to : from;
    double end = Double.isNaN(to) ? from : to;
    double farthest = 0;
    for (int i = jolt.first(); i <= jolt.last(); i++) {
      double share = (i - jolt.first() + 1.0) / (jolt.last() - jolt.first() + 2.0);
      double away = whole.arcsec(i) - (start + share * (end - start));
      farthest = Math.abs(away) > Math.abs(farthest) ? away : farthest;
    }
    return farthest;
  }

  private double mean(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += whole.arcsec(i);
    }
    return sum / (to - from);
  }
}
