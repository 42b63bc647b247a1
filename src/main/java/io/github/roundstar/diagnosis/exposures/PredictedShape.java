package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.CovarianceEllipse;
import io.github.roundstar.signal.Stretch;
import io.github.roundstar.sky.GuideTolerance;
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

  /**
   * The star image of an exposure.
   *
   * @param window the exposure on the log
   * @param turn what the field's turn adds, as (ee, nn, en) [arcsec2]
   * @param seeing width of the round image [arcsec]
   */
  static PredictedShape of(Window window, double[] turn, Estimate seeing) {
    CoreShape core = window.core(i -> true, turn, seeing.value());
    Stretch best = stretch(core);
    Estimate wide = interval(window, turn, seeing.hi95());
    Estimate narrow = interval(window, turn, seeing.lo95());
    double value = best.elongation();
    Estimate elongation =
        new Estimate(
            value,
            Math.min(value, Math.min(wide.lo95(), narrow.lo95())),
            Math.max(value, Math.max(wide.hi95(), narrow.hi95())));
    CovarianceEllipse shape = new CovarianceEllipse(core.ee(), core.nn(), core.en());
    return new PredictedShape(
        best,
        elongation,
        elongation.lo95() > 1 ? OptionalDouble.of(best.angleDegrees()) : OptionalDouble.empty(),
        GuideTolerance.FWHM_PER_SIGMA * shape.majorSigma(),
        GuideTolerance.FWHM_PER_SIGMA * shape.minorSigma());
  }

  private static Estimate interval(Window window, double[] turn, double fwhm) {
    CoreShape core = window.core(i -> true, turn, fwhm);
    double mean = (core.ee() + core.nn()) / 2;
    return stretch(core).elongation(window.motion().sigma() / mean);
  }

  /** Stretch of a star image, north through east. */
  static Stretch stretch(CoreShape core) {
    return Stretch.of(core.nn(), core.ee(), core.en());
  }

  /** Variance of a Gaussian of this width. */
  static double variance(double fwhm) {
    return fwhm * fwhm / (GuideTolerance.FWHM_PER_SIGMA * GuideTolerance.FWHM_PER_SIGMA);
  }

  /** What a drift of a length along a direction adds to a star image: (ee, nn, en) [arcsec2]. */
  static double[] trail(double eastArcsec, double northArcsec) {
    return new double[] {
      eastArcsec * eastArcsec / 12, northArcsec * northArcsec / 12, eastArcsec * northArcsec / 12
    };
  }
}
