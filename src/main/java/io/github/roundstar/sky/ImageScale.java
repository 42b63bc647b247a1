package io.github.roundstar.sky;

import org.apache.commons.math3.util.FastMath;

/** What optics and pixels make of the sky. */
public final class ImageScale {
  private static final double ARCSEC_PER_RADIAN = FastMath.toDegrees(1) * 3600;
  private static final double GREEN_METRES = 550e-9;

  private ImageScale() {}

  /**
   * Sky that a binned pixel covers in the middle of the field [arcsec].
   *
   * @param focalLengthMillimetres &gt; 0 [mm]
   * @param pixelMicrometres size of a pixel, unbinned, &gt; 0 [um]
   * @param binning pixels binned per side
   */
  public static double arcsecPerPixel(
      double focalLengthMillimetres, double pixelMicrometres, int binning) {
    return ARCSEC_PER_RADIAN * pixelMicrometres * binning * 1e-3 / focalLengthMillimetres;
  }

  /**
   * FWHM of the diffraction disc of a round aperture without obstruction, at 550 nm [arcsec].
   *
   * @param apertureMillimetres free aperture, &gt; 0 [mm]
   * @see "Born &amp; Wolf, Principles of Optics, section 8.5, for the Airy pattern; 1.029 lambda /
   *     D"
   */
  public static double diffractionFwhmArcsec(double apertureMillimetres) {
    return ARCSEC_PER_RADIAN * 1.029 * GREEN_METRES / (apertureMillimetres * 1e-3);
  }
}
