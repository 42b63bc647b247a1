package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;

/** How far an estimate lies from where it should be, either way. */
final class Deviation {
  private Deviation() {}

  /** Distance from {@code right}; the lower bound is 0 where the interval holds it. */
  static Estimate from(Estimate estimate, double right) {
    double low = Math.abs(estimate.lo95() - right);
    double high = Math.abs(estimate.hi95() - right);
    double value = Math.abs(estimate.value() - right);
    return new Estimate(
        value, estimate.covers(right) ? 0 : Math.min(low, high), Math.max(low, high));
  }
}
