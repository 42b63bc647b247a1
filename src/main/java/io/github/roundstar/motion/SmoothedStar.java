package io.github.roundstar.motion;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;

/**
 * Where the star really was in every frame of a run, without the noise of measuring it: what a
 * camera behind the same mount saw it do. Immutable.
 *
 * <p>The motion of the mount is wander, drift, bend and turning gears; pulses push it as strongly
 * as was found, behind the play that was found. Given wander and noise, the best estimate of the
 * motion from all frames is a fixed-interval smoother beside generalised least squares (best linear
 * unbiased prediction); pulses and set points then lead back to the offset. At a jolt the star may
 * be anywhere: there only the frame itself counts.
 *
 * <p>A smoothed path moves less than the star did, by what is not known of it: mean squares of it
 * need the variances beside them, as {@link #spread} adds them.
 *
 * @see "Robinson (1991), Statistical Science 6, 15, for the prediction and its error"
 */
public final class SmoothedStar {
  private final AxisPath ra;
  private final AxisPath dec;

  private SmoothedStar(AxisPath ra, AxisPath dec) {
    this.ra = ra;
    this.dec = dec;
  }

  /**
   * Smooths a run.
   *
   * @param ra motion in right ascension, with what was found of it
   * @param dec motion in declination, likewise
   * @return nothing, with the reason, when the motion of either axis cannot be had or the run is
   *     too short
   */
  public static Answer<SmoothedStar> of(
      GuideRun run, Equipment equipment, Answer<AxisMotion> ra, Answer<AxisMotion> dec) {
    return ra.then(motion -> AxisPath.of(run, Axis.RA, equipment, motion))
        .then(
            raPath ->
                dec.then(motion -> AxisPath.of(run, Axis.DEC, equipment, motion))
                    .map(decPath -> new SmoothedStar(raPath, decPath)));
  }

  /** Number of frames: all of the run, measured or not. */
  public int size() {
    return ra.size();
  }

  /** Offset east in frame {@code i} [arcsec]. */
  public double raArcsec(int i) {
    return ra.arcsec(i);
  }

  /** Offset north in frame {@code i} [arcsec]. */
  public double decArcsec(int i) {
    return dec.arcsec(i);
  }

  /** Variance of {@link #raArcsec} [arcsec&sup2;]; larger where the star was not measured. */
  public double raVariance(int i) {
    return ra.variance(i);
  }

  /** Variance of {@link #decArcsec} [arcsec&sup2;]. */
  public double decVariance(int i) {
    return dec.variance(i);
  }

  /**
   * How the star moved about its mean place over some frames.
   *
   * @param raArcsec2 mean square east [arcsec&sup2;]
   * @param decArcsec2 mean square north [arcsec&sup2;]
   * @param raDecArcsec2 mean product [arcsec&sup2;]
   */
  public record Spread(double raArcsec2, double decArcsec2, double raDecArcsec2) {}

  /**
   * Mean squares about the mean over frames {@code from} up to but not including {@code to}: those
   * of the path and what is expected on top, since the path is not known exactly.
   */
  public Spread spread(int from, int to) {
    if (from < 0 || from >= to || to > size()) {
      throw new IllegalArgumentException("frames " + from + " to " + to + " of " + size());
    }
    double meanRa = ra.mean(from, to);
    double meanDec = dec.mean(from, to);
    double product = 0;
    for (int i = from; i < to; i++) {
      product += (ra.arcsec(i) - meanRa) * (dec.arcsec(i) - meanDec);
    }
    return new Spread(ra.meanSquare(from, to), dec.meanSquare(from, to), product / (to - from));
  }
}
