package io.github.roundstar.simulate;

import io.github.roundstar.simulate.SimulatedExposure.Image;
import io.github.roundstar.sky.GuideTolerance;

/**
 * What the main camera does, and what is wrong between it and the guide camera.
 *
 * @param seconds length of an exposure [s]
 * @param gapSeconds from one exposure's end to the next one's start [s]
 * @param waitSeconds from a dither to the next exposure; NaN: until the log says that it has
 *     settled
 * @param clockOffsetSeconds how far the camera's clock is ahead of the log's [s]
 * @param optics the main camera's optics
 * @param flexureRaArcsecPerHour how the two cameras move apart, east [arcsec/h]
 * @param flexureDecArcsecPerHour the same, north [arcsec/h]
 * @param guideStarEastArcmin place of the guide star from the image's centre, east [arcmin]
 * @param guideStarNorthArcmin the same, north [arcmin]
 * @param dispersionArcsec standard deviation of the colours along the vertical at 45 degrees
 *     [arcsec]
 * @param defocusArcsecPerHour width of the blur that grows as the focus goes away [arcsec/h]
 */
public record ExposurePlan(
    double seconds,
    double gapSeconds,
    double waitSeconds,
    double clockOffsetSeconds,
    Optics optics,
    double flexureRaArcsecPerHour,
    double flexureDecArcsecPerHour,
    double guideStarEastArcmin,
    double guideStarNorthArcmin,
    double dispersionArcsec,
    double defocusArcsecPerHour) {
  /** A camera without faults, for scenarios that name none. */
  static final ExposurePlan PLAIN =
      new ExposurePlan(
          300,
          5,
          Double.NaN,
          0,
          new Optics(2.4, 1, 0, Growth.EVEN, 1.2, 600, 400, 0, 60),
          0,
          0,
          0,
          0,
          0,
          0);

  /** Where in the field star images of perfect guiding are long. */
  public enum Growth {
    /** The same everywhere. */
    EVEN,
    /** Outwards from the centre, round there. */
    RADIAL,
    /** From round at the first column to the rim at the last, at one angle. */
    ONE_SIDED
  }

  /**
   * The main camera's optics and their faults.
   *
   * @param fwhmArcsec star images of perfect guiding, air included [arcsec]
   * @param elongation of star images of perfect guiding, where it is worst
   * @param angleDegrees position angle of their long axis [deg]
   * @param growth how the elongation changes over the field
   * @param arcsecPerPixel scale
   * @param widthPixels sensor
   * @param heightPixels sensor
   * @param positionAngleDegrees of the direction of later rows [deg]
   * @param stars in the field
   */
  public record Optics(
      double fwhmArcsec,
      double elongation,
      double angleDegrees,
      Growth growth,
      double arcsecPerPixel,
      int widthPixels,
      int heightPixels,
      double positionAngleDegrees,
      int stars) {
    /**
     * Star image of perfect guiding at a place.
     *
     * @param fromX from the field's centre along the rows [px]
     * @param fromY from the field's centre along the columns [px]
     */
    Image image(double fromX, double fromY) {
      double minor = fwhmArcsec / GuideTolerance.FWHM_PER_SIGMA;
      double longer = 1 + (elongation - 1) * share(fromX, fromY);
      double excess = minor * minor * (longer * longer - 1);
      // Right is a position angle of up - 90 degrees, and up lies 90 degrees from it.
      double angle =
          growth == Growth.RADIAL
              ? positionAngleDegrees - 90 + StrictMath.toDegrees(StrictMath.atan2(fromY, fromX))
              : angleDegrees;
      return new Image(minor * minor, minor * minor, 0).plus(Image.along(excess, angle));
    }

    private double share(double fromX, double fromY) {
      double rim = StrictMath.hypot(widthPixels, heightPixels) / 2;
      return switch (growth) {
        case EVEN -> 1;
        case RADIAL -> (fromX * fromX + fromY * fromY) / (rim * rim);
        case ONE_SIDED -> 0.5 + fromX / widthPixels;
      };
    }
  }
}
