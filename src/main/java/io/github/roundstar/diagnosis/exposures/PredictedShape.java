package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.CovarianceEllipse;
import io.github.roundstar.signal.Stretch;
import java.util.OptionalDouble;

/**
 * The star image that the guide log implies: a round image by air and optics, widened by the motion
 * during the exposure and by the field's turn. Second moments of independent parts add.
 *
 * @param stretch its stretch, north through east
 * @param elongation long axis over short; the interval holds the uncertainty of the motion and of
 *     the round image's width
 * @param angleDegrees position angle of the long axis [deg], where the interval excludes a circle
 * @param majorFwhmArcsec width along it [arcsec]
 * @param minorFwhmArcsec width across it [arcsec]
 */
record PredictedShape(
    Stretch stretch,
    Estimate elongation,
    OptionalDouble angleDegrees,
    double majorFwhmArcsec,
    double minorFwhmArcsec) {
  private static final double FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

  /**
   * Convolves motion and round image.
   *
   * @param motion motion during the exposure
   * @param turn what the field's turn adds, as (ee, nn, en)
   * @param seeing width of the round image [arcsec]
   */
  static PredictedShape of(WindowMotion motion, double[] turn, Estimate seeing) {
    Stretch best = stretch(motion, turn, seeing.value());
    Estimate wide = best(motion, turn, seeing.hi95());
    Estimate narrow = best(motion, turn, seeing.lo95());
    double value = best.elongation();
    Estimate elongation =
        new Estimate(value, Math.min(value, wide.lo95()), Math.max(value, narrow.hi95()));
    double round = variance(seeing.value());
    CovarianceEllipse shape =
        new CovarianceEllipse(
            round + motion.ee() + turn[0], round + motion.nn() + turn[1], motion.en() + turn[2]);
    return new PredictedShape(
        best,
        elongation,
        elongation.lo95() > 1 ? OptionalDouble.of(best.angleDegrees()) : OptionalDouble.empty(),
        FWHM_PER_SIGMA * shape.majorSigma(),
        FWHM_PER_SIGMA * shape.minorSigma());
  }

  private static Estimate best(WindowMotion motion, double[] turn, double fwhm) {
    double mean = variance(fwhm) + (motion.ee() + motion.nn() + turn[0] + turn[1]) / 2;
    return stretch(motion, turn, fwhm).elongation(motion.sigma() / mean);
  }

  static Stretch stretch(WindowMotion motion, double[] turn, double fwhm) {
    double round = variance(fwhm);
    return Stretch.of(
        round + motion.nn() + turn[1], round + motion.ee() + turn[0], motion.en() + turn[2]);
  }

  private static double variance(double fwhm) {
    return fwhm * fwhm / (FWHM_PER_SIGMA * FWHM_PER_SIGMA);
  }

  /** What a drift of a length along a direction adds to a star image: (ee, nn, en) [arcsec2]. */
  static double[] trail(double eastArcsec, double northArcsec) {
    return new double[] {
      eastArcsec * eastArcsec / 12, northArcsec * northArcsec / 12, eastArcsec * northArcsec / 12
    };
  }
}
