package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Quantile;
import io.github.roundstar.signal.RobustScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the main camera and the guide camera move apart: the stars' shift from one exposure to the
 * next, less what the guide star itself moved by, dithers included, over the time between. The rate
 * is the median over the pairs of exposures, its interval that of a median of independent pairs
 * (Gaussian: 1.2533 sigma over root n, sigma from the robust scatter).
 *
 * @param eastArcsecPerHour rate east [arcsec/h]
 * @param northArcsecPerHour rate north [arcsec/h]
 * @param pairs pairs of exposures
 */
public record Flexure(Estimate eastArcsecPerHour, Estimate northArcsecPerHour, int pairs) {
  private static final int FEWEST_PAIRS = 3;

  /**
   * One pair of exposures.
   *
   * @param eastArcsec shift that the guide log does not explain, east [arcsec]
   * @param northArcsec the same north [arcsec]
   * @param sigmaArcsec standard error of either [arcsec]
   * @param hours from the middle of one to the middle of the other [h]
   */
  record Pair(double eastArcsec, double northArcsec, double sigmaArcsec, double hours) {}

  static Optional<Flexure> of(List<Pair> pairs) {
    List<Pair> usable = new ArrayList<>(pairs);
    usable.removeIf(pair -> !(pair.hours() > 0));
    if (usable.size() < FEWEST_PAIRS) {
      return Optional.empty();
    }
    double own =
        usable.stream().mapToDouble(p -> p.sigmaArcsec() / p.hours()).average().orElseThrow();
    return Optional.of(
        new Flexure(
            rate(usable.stream().mapToDouble(p -> p.eastArcsec() / p.hours()).toArray(), own),
            rate(usable.stream().mapToDouble(p -> p.northArcsec() / p.hours()).toArray(), own),
            usable.size()));
  }

  private static Estimate rate(double[] rates, double own) {
    double sigma = Math.max(RobustScale.of(rates), own);
    return Estimate.symmetric(
        Quantile.median(rates), Estimate.SIGMAS_95 * 1.2533 * sigma / Math.sqrt(rates.length));
  }

  /** Whether the interval of either rate excludes zero. */
  boolean certain() {
    return !eastArcsecPerHour.covers(0) || !northArcsecPerHour.covers(0);
  }
}
