package io.github.roundstar.motion;

import java.util.Arrays;

/**
 * The law of a guide loop in one axis: which pulse answers the offsets so far.
 *
 * <p>The offsets pass an exponential filter; the filtered offset of {@code delayFrames} frames ago
 * is answered in proportion, unless it is below the deadband, and no pulse is longer than the
 * limits. A frame without a star is answered by no pulse and leaves the filter as it was.
 *
 * @param millisPerArcsec pulse for each arcsec of the filtered offset [ms/arcsec]
 * @param deadbandArcsec filtered offsets below this are left alone [arcsec, &ge; 0]
 * @param memory share of the filtered offset that comes from the frame before, 0 to below 1
 * @param delayFrames how many frames old the answered offset is [&ge; 0]
 * @param lowestMillis longest pulse west or south, as a negative number; 0 when none is sent that
 *     way, minus infinity when no limit is known
 * @param highestMillis longest pulse east or north, likewise
 * @param shortestMillis pulses that would be shorter are not sent; unlike a deadband this leaves
 *     smaller offsets alone the stronger the law is [ms, &ge; 0]
 */
public record Controller(
    double millisPerArcsec,
    double deadbandArcsec,
    double memory,
    int delayFrames,
    double lowestMillis,
    double highestMillis,
    double shortestMillis) {
  /** Checks. */
  public Controller {
    if (!(memory >= 0 && memory < 1 && delayFrames >= 0 && deadbandArcsec >= 0)) {
      throw new IllegalArgumentException(
          "memory " + memory + ", delay " + delayFrames + ", deadband " + deadbandArcsec);
    }
  }

  /** A law that sends pulses however short. */
  public Controller(
      double millisPerArcsec,
      double deadbandArcsec,
      double memory,
      int delayFrames,
      double lowestMillis,
      double highestMillis) {
    this(millisPerArcsec, deadbandArcsec, memory, delayFrames, lowestMillis, highestMillis, 0);
  }

  /** The same law with another strength and deadband. */
  public Controller with(double otherMillisPerArcsec, double otherDeadbandArcsec) {
    return new Controller(
        otherMillisPerArcsec,
        otherDeadbandArcsec,
        memory,
        delayFrames,
        lowestMillis,
        highestMillis,
        shortestMillis);
  }

  /** The same law, but what leaves small offsets alone is a shortest pulse down to a deadband. */
  Controller withDeadband(double declaredArcsec) {
    return deadbandArcsec <= declaredArcsec
        ? this
        : new Controller(
            millisPerArcsec,
            declaredArcsec,
            memory,
            delayFrames,
            lowestMillis,
            highestMillis,
            deadbandArcsec * millisPerArcsec);
  }

  /** The pulse for a filtered offset that is old enough [ms]; none for NaN. */
  double answer(double filteredArcsec) {
    if (!(Math.abs(filteredArcsec) >= deadbandArcsec)) {
      return 0;
    }
    double millis = millisPerArcsec * filteredArcsec;
    return Math.abs(millis) < shortestMillis
        ? 0
        : Math.max(lowestMillis, Math.min(highestMillis, millis));
  }

  /** A loop at its first frame. */
  Course begin() {
    return new Course();
  }

  /**
   * The filtered offsets that the pulses answer.
   *
   * @param offsetsArcsec offset of each frame; NaN where the star was not measured
   * @return per frame what its pulse answers; NaN for none
   */
  double[] answered(double[] offsetsArcsec) {
    Course course = begin();
    return Arrays.stream(offsetsArcsec).map(course::answered).toArray();
  }

  /** A loop under way: what it remembers. */
  final class Course {
    private final double[] waiting = new double[delayFrames];
    private int oldest;
    private double filtered = Double.NaN;

    private Course() {
      Arrays.fill(waiting, Double.NaN);
    }

    /** The pulse after the next frame [ms]. */
    double next(double offsetArcsec) {
      return answer(answered(offsetArcsec));
    }

    /** The filtered offset that the pulse after the next frame answers. */
    double answered(double offsetArcsec) {
      double now = Double.NaN;
      if (!Double.isNaN(offsetArcsec)) {
        filtered =
            Double.isNaN(filtered) ? offsetArcsec : memory * filtered + (1 - memory) * offsetArcsec;
        now = filtered;
      }
      if (delayFrames == 0) {
        return now;
      }
      double due = waiting[oldest];
      waiting[oldest] = now;
      oldest = (oldest + 1) % delayFrames;
      return due;
    }
  }
}
