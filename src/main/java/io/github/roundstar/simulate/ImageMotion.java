package io.github.roundstar.simulate;

/**
 * Image motion by turbulent air on one axis, averaged over exposures.
 *
 * <p>The tilt spectrum is f^(-2/3) between the frequencies at which the wind carries the outer
 * scale and the aperture past the telescope, flat below and steep above (Martin 1987, PASP 99,
 * 1360). A sum of Ornstein-Uhlenbeck processes with time constants T spread evenly in their
 * logarithm and variances as T^(-1/3) follows it; each is averaged over the exposure exactly.
 */
final class ImageMotion {
  private static final int PARTS = 6;
  private static final double WAVELENGTH_METRES = 500e-9;
  private static final double ARCSEC_PER_RADIAN = 648_000 / Math.PI;

  private final Relaxation[] parts = new Relaxation[PARTS];

  ImageMotion(SkyPlan.Seeing seeing, NoiseStream noise) {
    double aperture = seeing.apertureMillimetres() / 1000;
    double shortest = aperture / (Math.PI * seeing.windMetresPerSecond());
    double longest = seeing.outerScaleMetres() / (2 * Math.PI * seeing.windMetresPerSecond());
    double ratio = StrictMath.pow(longest / shortest, 1.0 / (PARTS - 1));
    double sum = 0;
    for (int i = 0; i < PARTS; i++) {
      sum += StrictMath.pow(ratio, -i / 3.0);
    }
    double variance =
        varianceArcsec2(seeing.fwhmArcsec(), aperture, seeing.outerScaleMetres()) / sum;
    for (int i = 0; i < PARTS; i++) {
      parts[i] =
          new Relaxation(
              variance * StrictMath.pow(ratio, -i / 3.0),
              shortest * StrictMath.pow(ratio, i),
              noise);
    }
  }

  /**
   * Variance of the instantaneous centroid per axis [arcsec&sup2;]: 0.1698 L&sup2; r0^(-5/3)
   * (D^(-1/3) - 1.525 L0^(-1/3)) at wavelength L, with r0 = 0.98 L / FWHM.
   *
   * @see "Sarazin &amp; Roddier (1990), A&amp;A 227, 294; Tokovinin (2002), PASP 114, 1156; outer
   *     scale term: Ziad et al. (2000), Appl. Opt. 39, 5415"
   */
  static double varianceArcsec2(double fwhmArcsec, double apertureMetres, double outerScaleMetres) {
    double coherence = 0.98 * WAVELENGTH_METRES / (fwhmArcsec / ARCSEC_PER_RADIAN);
    double geometry =
        StrictMath.pow(apertureMetres, -1.0 / 3)
            - 1.525 * StrictMath.pow(outerScaleMetres, -1.0 / 3);
    return 0.169803
        * WAVELENGTH_METRES
        * WAVELENGTH_METRES
        * StrictMath.pow(coherence, -5.0 / 3)
        * geometry
        * ARCSEC_PER_RADIAN
        * ARCSEC_PER_RADIAN;
  }

  /** Goes on without looking. */
  void skip(double seconds) {
    for (Relaxation part : parts) {
      part.skip(seconds);
    }
  }

  /** Goes on and averages [arcsec]. */
  double mean(double seconds) {
    double sum = 0;
    for (Relaxation part : parts) {
      sum += part.mean(seconds);
    }
    return sum;
  }
}
