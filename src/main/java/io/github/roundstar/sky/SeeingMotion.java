package io.github.roundstar.sky;

import org.apache.commons.math3.util.FastMath;

/**
 * Image motion by turbulent air and the width of a star image that goes with it, Kolmogorov
 * turbulence, at 500 nm: one-axis variance = 0.1698 &lambda;&sup2; r0^(-5/3) D^(-1/3) (centroid),
 * FWHM = 0.98 &lambda; / r0.
 *
 * @see "Fried (1975), Radio Science 10, 71; Martin (1987), PASP 99, 1360; Tokovinin (2002), PASP
 *     114, 1156"
 */
public final class SeeingMotion {
  private static final double WAVELENGTH_METRES = 500e-9;
  private static final double ARCSEC_PER_RADIAN = FastMath.toDegrees(1) * 3600;
  private static final double CENTROID = 0.169803;
  private static final double FWHM_OF_R0 = 0.98;

  private SeeingMotion() {}

  /**
   * Standard deviation of a star's motion in one axis, seen in an instant [arcsec].
   *
   * @param fwhmArcsec of a long-exposure image [arcsec]
   * @param apertureMetres free aperture [m]
   */
  public static double axisRmsArcsec(double fwhmArcsec, double apertureMetres) {
    double r0 = FWHM_OF_R0 * WAVELENGTH_METRES * ARCSEC_PER_RADIAN / fwhmArcsec;
    return ARCSEC_PER_RADIAN
        * WAVELENGTH_METRES
        * FastMath.sqrt(CENTROID)
        * FastMath.pow(r0, -5.0 / 6)
        * FastMath.pow(apertureMetres, -1.0 / 6);
  }

  /**
   * The width that goes with a motion seen in an instant: the inverse of {@link #axisRmsArcsec}
   * [arcsec].
   */
  public static double fwhmArcsec(double axisRmsArcsec, double apertureMetres) {
    return FastMath.pow(axisRmsArcsec / axisRmsArcsec(1, apertureMetres), 6.0 / 5);
  }

  /**
   * What is left of the motion's standard deviation after averaging, as a share.
   *
   * @param exposureSeconds exposure [s]
   * @param beginSeconds time from which averaging acts [s]
   * @param exponent 1/6 for endless eddies, 1/2 for none larger than what crosses in that time
   */
  public static double averaged(double exposureSeconds, double beginSeconds, double exponent) {
    return FastMath.pow(FastMath.max(1, exposureSeconds / beginSeconds), -exponent);
  }

  /**
   * Centroid error of one axis that comes from the star's own photons [arcsec].
   *
   * @param snr signal to noise of the star
   * @see "King (1983), PASP 95, 163"
   */
  public static double centroidArcsec(double fwhmArcsec, double snr) {
    return fwhmArcsec / (GuideTolerance.FWHM_PER_SIGMA * snr);
  }

  /** How much wider a star is at an altitude than in the zenith: airmass to the power 3/5. */
  public static double widening(double altitudeDegrees) {
    return FastMath.pow(FastMath.sin(FastMath.toRadians(altitudeDegrees)), -0.6);
  }
}
