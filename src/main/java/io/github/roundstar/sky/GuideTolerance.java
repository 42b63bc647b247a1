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
  public static final double FWHM_PER_SIGMA = 2.3548200450309493;

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

  /**
   * RMS of the worse axis that brings the elongation to its limit while the other axis scatters too
   * [arcsec]; infinity when so even a scatter never does.
   *
   * @param otherShare RMS of the other axis over that of this one, 0 to 1
   */
  public static double axisRmsArcsec(double fwhmArcsec, double elongationLimit, double otherShare) {
    double square = elongationLimit * elongationLimit;
    double left = 1 - square * otherShare * otherShare;
    return left <= 0
        ? Double.POSITIVE_INFINITY
        : axisRmsArcsec(fwhmArcsec, elongationLimit) / Math.sqrt(left);
  }

  /**
   * Length of an even drift that brings the elongation to its limit [arcsec]: a box of that length
   * has the variance length^2 / 12.
   */
  public static double trailArcsec(double fwhmArcsec, double elongationLimit) {
    return Math.sqrt(12) * axisRmsArcsec(fwhmArcsec, elongationLimit);
  }

  /**
   * Longest exposure in which a sinusoid moves the star by no more than a given length, wherever in
   * its turn the exposure begins [s]; infinity when the whole swing is no longer than that.
   *
   * @param periodSeconds of the sinusoid [s]
   * @param amplitudeArcsec half of peak to peak, on the sky, &gt; 0 [arcsec]
   * @param trailArcsec length allowed [arcsec]
   */
  public static double exposureSeconds(
      double periodSeconds, double amplitudeArcsec, double trailArcsec) {
    double share = trailArcsec / (2 * amplitudeArcsec);
    return share >= 1 ? Double.POSITIVE_INFINITY : periodSeconds / Math.PI * Math.asin(share);
  }
}
