package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import java.util.Optional;

/**
 * What one night says of one figure.
 *
 * @param value the figure; NaN when the night does not have it
 * @param withinError standard error within the night; 0 when the night does not tell it
 * @param because why the night does not have the figure; empty when it has
 */
record Reading(double value, double withinError, String because) {

  static Reading of(double value, double withinError) {
    return new Reading(value, withinError, "");
  }

  static Reading of(Estimate estimate) {
    return of(estimate.value(), error(estimate));
  }

  static Reading none(String because) {
    return new Reading(Double.NaN, 0, because);
  }

  static Reading of(Optional<Estimate> estimate, String because) {
    return estimate.map(Reading::of).orElseGet(() -> none(because));
  }

  boolean known() {
    return because.isEmpty();
  }

  /** In another unit. */
  Reading times(double factor) {
    return known() ? of(value * factor, withinError * Math.abs(factor)) : this;
  }

  /** The root of a mean square. */
  Reading root() {
    double root = Math.sqrt(value);
    return of(root, withinError / (2 * root));
  }

  /** Standard error that an interval stands for. */
  static double error(Estimate estimate) {
    return (estimate.hi95() - estimate.lo95()) / (2 * Estimate.SIGMAS_95);
  }
}
