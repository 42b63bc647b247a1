package io.github.roundstar.motion;

import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.signal.Quantile;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The used offsets of one or more runs, each axis about its run's own mean; immutable.
 *
 * <p>RMS has divisor n and nothing is clipped, jolts included. A night pools its runs frame by
 * frame, so that a run weighs as much as it has used frames.
 */
public final class StarScatter {
  private final double[] ra;
  private final double[] dec;
  private final double meanRa;
  private final double meanDec;

  private StarScatter(double[] ra, double[] dec, double meanRa, double meanDec) {
    this.ra = ra;
    this.dec = dec;
    this.meanRa = meanRa;
    this.meanDec = meanDec;
  }

  /** The used frames of one run; nothing when there are none. */
  public static Optional<StarScatter> of(Frames frames) {
    int[] used =
        IntStream.range(0, frames.size()).filter(i -> frames.state(i) == FrameState.USED).toArray();
    if (used.length == 0) {
      return Optional.empty();
    }
    double[] ra = Arrays.stream(used).mapToDouble(frames::raArcsec).toArray();
    double[] dec = Arrays.stream(used).mapToDouble(frames::decArcsec).toArray();
    double meanRa = Arrays.stream(ra).average().orElseThrow();
    double meanDec = Arrays.stream(dec).average().orElseThrow();
    subtract(ra, meanRa);
    subtract(dec, meanDec);
    return Optional.of(new StarScatter(ra, dec, meanRa, meanDec));
  }

  /** Both together, frames of the other after those of this one. */
  public StarScatter pooledWith(StarScatter other) {
    double share = (double) frames() / (frames() + other.frames());
    return new StarScatter(
        joined(ra, other.ra),
        joined(dec, other.dec),
        share * meanRa + (1 - share) * other.meanRa,
        share * meanDec + (1 - share) * other.meanDec);
  }

  /** Number of frames. */
  public int frames() {
    return ra.length;
  }

  /** A copy of the offsets of an axis about their run's mean [arcsec]. */
  public double[] aboutMeanArcsec(Axis axis) {
    return column(axis).clone();
  }

  /** Mean offset from the set point [arcsec]. */
  public double meanArcsec(Axis axis) {
    return axis == Axis.RA ? meanRa : meanDec;
  }

  /** Root mean square about the mean [arcsec]. */
  public double rmsArcsec(Axis axis) {
    double sum = 0;
    for (double value : column(axis)) {
      sum += value * value;
    }
    return Math.sqrt(sum / frames());
  }

  /** Largest distance from the mean [arcsec]. */
  public double peakArcsec(Axis axis) {
    return Arrays.stream(column(axis)).map(Math::abs).max().orElseThrow();
  }

  /** 95 % quantile of the distance from the mean [arcsec]. */
  public double p95Arcsec(Axis axis) {
    return Quantile.of(Arrays.stream(column(axis)).map(Math::abs).toArray(), 0.95);
  }

  /** Root of the summed squares of both axes' RMS [arcsec]. */
  public double rmsRadialArcsec() {
    return Math.hypot(rmsArcsec(Axis.RA), rmsArcsec(Axis.DEC));
  }

  /** 95 % quantile of the distance from the mean place in both axes [arcsec]. */
  public double p95RadiusArcsec() {
    double[] radius = new double[frames()];
    Arrays.setAll(radius, i -> Math.hypot(ra[i], dec[i]));
    return Quantile.of(radius, 0.95);
  }

  private double[] column(Axis axis) {
    return axis == Axis.RA ? ra : dec;
  }

  private static void subtract(double[] values, double mean) {
    for (int i = 0; i < values.length; i++) {
      values[i] -= mean;
    }
  }

  private static double[] joined(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }
}
