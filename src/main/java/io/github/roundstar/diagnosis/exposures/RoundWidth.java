package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import io.github.roundstar.sky.GuideTolerance;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Width of the star image that air and optics alone make.
 *
 * @param fwhmArcsec the width [arcsec]
 * @param from where it comes from, in words
 */
public record RoundWidth(Estimate fwhmArcsec, String from) {

  /** The air changes over a night by about this share; common practice, no source. */
  private static final double USUAL_SPREAD = 0.15;

  /** What is usual under a suburban sky [arcsec]; common practice, no source. */
  private static final Estimate USUAL = new Estimate(2.8, 2, 4);

  private static final int FEWEST_MEASURED = 3;

  /** Twelve halvings of a width leave a four-thousandth of it. */
  private static final int HALVINGS = 12;

  /** Motion that leaves less of a width than this leaves nothing to tell. */
  private static final double LEAST_SHARE = 0.1;

  /**
   * Width of the round image that the motion widens to a measured one, found by halving: a flat
   * trail has no Gaussian moments that could be subtracted. 0 where the motion alone is wider.
   *
   * @param fwhmArcsec geometric mean of both measured widths [arcsec]
   * @param turned what the field's turn about the guide star adds to the motion: (ee, nn, en)
   *     [arcsec2]
   */
  static double withoutMotion(double fwhmArcsec, Window window, double[] turned) {
    double low = LEAST_SHARE * fwhmArcsec;
    double high = fwhmArcsec;
    if (widened(window, turned, low) > fwhmArcsec) {
      return 0;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean wide = widened(window, turned, middle) > fwhmArcsec;
      low = wide ? low : middle;
      high = wide ? middle : high;
    }
    return (low + high) / 2;
  }

  private static double widened(Window window, double[] turned, double roundFwhm) {
    CoreShape core = window.core(i -> true, turned, roundFwhm);
    double area = core.ee() * core.nn() - core.en() * core.en();
    return GuideTolerance.FWHM_PER_SIGMA * Math.pow(Math.max(0, area), 0.25);
  }

  /**
   * The measured widths of the night win over what the equipment file says, and that over what is
   * usual.
   *
   * @param measured widths without the motion [arcsec]
   */
  public static RoundWidth of(List<Double> measured, OptionalDouble declared) {
    double[] widths = measured.stream().mapToDouble(w -> w).filter(w -> w > 0).toArray();
    if (widths.length >= FEWEST_MEASURED) {
      double median = Quantile.median(widths);
      double half = Math.max(0.05 * median, Math.min(0.3 * median, 2 * RobustScale.of(widths)));
      return new RoundWidth(
          Estimate.symmetric(median, half), "the stars of " + widths.length + " exposures");
    }
    if (declared.isPresent()) {
      double width = declared.getAsDouble();
      return new RoundWidth(
          new Estimate(width, width * (1 - USUAL_SPREAD), width * (1 + USUAL_SPREAD)),
          "seeing_fwhm_arcsec of the equipment file");
    }
    if (widths.length > 0) {
      double middle = Quantile.median(widths);
      double[] ends = {Arrays.stream(widths).min().orElse(middle), middle};
      return new RoundWidth(
          new Estimate(middle, 0.8 * ends[0], 1.25 * Arrays.stream(widths).max().orElse(middle)),
          "the stars of few exposures");
    }
    return new RoundWidth(USUAL, "what is usual, since neither images nor equipment file tell");
  }
}
