package io.github.roundstar.simulate;

import io.github.roundstar.sky.GuideTolerance;
import java.time.Instant;
import java.util.List;

/**
 * One exposure of the main camera as it really was.
 *
 * @param file its file name
 * @param start by the camera's clock
 * @param run run of guiding during it
 * @param startSeconds since that run's start, by the log's clock [s]
 * @param seconds length [s]
 * @param path where the centre of the image was at each guide frame, east and north, set point and
 *     flexure included
 * @param turns rotation of the camera against the field since the run's start at each of them [deg]
 * @param blur what air and focus add to the star image of the optics, all over the field
 * @param image star image in the centre, as a Gaussian-weighted measurement sees it
 * @param corner the longest star image in a corner, likewise
 */
public record SimulatedExposure(
    String file,
    Instant start,
    int run,
    double startSeconds,
    double seconds,
    List<double[]> path,
    List<Double> turns,
    Image blur,
    Image image,
    Image corner) {
  /** Copies. */
  public SimulatedExposure {
    path = List.copyOf(path);
    turns = List.copyOf(turns);
  }

  /**
   * Second moments of a star image.
   *
   * @param ee variance east [arcsec2]
   * @param nn variance north [arcsec2]
   * @param en covariance [arcsec2]
   */
  public record Image(double ee, double nn, double en) {
    Image plus(Image other) {
      return new Image(ee + other.ee, nn + other.nn, en + other.en);
    }

    /** Variance along a position angle [deg]. */
    static Image along(double variance, double angleDegrees) {
      double east = StrictMath.sin(StrictMath.toRadians(angleDegrees));
      double north = StrictMath.cos(StrictMath.toRadians(angleDegrees));
      return new Image(variance * east * east, variance * north * north, variance * east * north);
    }

    /** Long axis over short. */
    public double elongation() {
      return StrictMath.sqrt((mean() + excess()) / (mean() - excess()));
    }

    /** Position angle of the long axis [deg, 0..180). */
    public double angleDegrees() {
      double angle = StrictMath.toDegrees(StrictMath.atan2(2 * en, nn - ee)) / 2;
      return angle < 0 ? angle + 180 : angle;
    }

    /** Geometric mean of both widths at half maximum [arcsec]. */
    public double fwhmArcsec() {
      return GuideTolerance.FWHM_PER_SIGMA * StrictMath.sqrt(StrictMath.sqrt(ee * nn - en * en));
    }

    private double mean() {
      return (ee + nn) / 2;
    }

    private double excess() {
      return StrictMath.hypot((ee - nn) / 2, en);
    }
  }

  /** Mean place of the stars, east and north [arcsec]. */
  double[] meanPlace() {
    double[] mean = new double[2];
    for (double[] at : path) {
      mean[0] += at[0] / path.size();
      mean[1] += at[1] / path.size();
    }
    return mean;
  }
}
