package io.github.roundstar.simulate;

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
    double dispersionArcsec) {
  /**
   * The main camera's optics and their faults.
   *
   * @param fwhmArcsec star images of perfect guiding, air included [arcsec]
   * @param elongation of star images of perfect guiding
   * @param angleDegrees position angle of their long axis [deg]
   * @param radial whether that elongation grows outwards from the centre instead
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
      boolean radial,
      double arcsecPerPixel,
      int widthPixels,
      int heightPixels,
      double positionAngleDegrees,
      int stars) {}
}
