package io.github.roundstar.sky;

/**
 * How much guiding scatter a round star bears. The star image is taken as the sum of a round image
 * made by air and optics and of the guiding scatter; second moments add (exact for any independent
 * shapes), so for one axis with scatter and the other without:
 *
 * <p>elongation^2 = 1 + (RMS / sigma)^2, with sigma = FWHM / 2.3548 (Gaussian core).
 */
public final class GuideTolerance {
  /** FWHM of a Gaussian in units of its standard deviation: 2 sqrt(2 ln 2). */
  public static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  private GuideTolerance() {}

  /**
   * RMS of one axis that brings the elongation to its limit while the other axis is perfect
   * [arcsec].
   *
   * @param fwhmArcsec FWHM of the star image without guiding scatter [arcsec]
   * @param elongationLimit major over minor axis that still counts as round, above 1
   */
  public static double axisRmsArcsec(double fwhmArcsec, double elongationLimit) {
    return fwhmArcsec / FWHM_PER_SIGMA * Math.sqrt(elongationLimit * elongationLimit - 1);
  }
}
