package io.github.roundstar.stars;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.CovarianceEllipse;
import io.github.roundstar.signal.Stretch;

/**
 * A measured star.
 *
 * @param x centre, 1 at the middle of the first pixel [px]
 * @param y centre, likewise along the columns [px]
 * @param flux of the fitted Gaussian [adu]
 * @param snr signal to noise of the whole star
 * @param xx variance along x of the Gaussian that fits best [px2]
 * @param yy variance along y [px2]
 * @param xy covariance [px2]
 * @param stretchSigma standard error of either part of its stretch
 */
public record Star(
    double x,
    double y,
    double flux,
    double snr,
    double xx,
    double yy,
    double xy,
    double stretchSigma) {
  private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  /** Its stretch, angles from +x towards +y. */
  public Stretch stretch() {
    return Stretch.of(xx, yy, xy);
  }

  /** Long axis over short, with its 95 % interval. */
  public Estimate elongation() {
    return stretch().elongation(stretchSigma);
  }

  /** Angle of its long axis from +x towards +y [deg, 0..180). */
  public double angleDegrees() {
    return stretch().angleDegrees();
  }

  /** Full width at half maximum along the long axis [px]. */
  public double majorFwhmPixels() {
    return FWHM_PER_SIGMA * new CovarianceEllipse(xx, yy, xy).majorSigma();
  }

  /** Full width at half maximum along the short axis [px]. */
  public double minorFwhmPixels() {
    return FWHM_PER_SIGMA * new CovarianceEllipse(xx, yy, xy).minorSigma();
  }

  /** Geometric mean of both widths [px]. */
  public double fwhmPixels() {
    return FWHM_PER_SIGMA * Math.pow(xx * yy - xy * xy, 0.25);
  }
}
