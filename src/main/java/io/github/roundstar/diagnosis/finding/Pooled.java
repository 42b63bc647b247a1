package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * A figure of all runs together: the mean over those that have it, weighted by their used frames.
 * What is not known of one run is mostly not known of the next either, so the half-widths are
 * averaged and not taken as independent.
 */
final class Pooled {
  private Pooled() {}

  /** The estimate; empty when no run has it. */
  static Optional<Estimate> estimate(NightResult night, Function<RunResult, Estimate> figure) {
    Optional<Estimate> only = Optional.empty();
    double weight = 0;
    double value = 0;
    double low = 0;
    double high = 0;
    int with = 0;
    for (RunResult run : night.runs()) {
      Estimate estimate = figure.apply(run);
      double frames = run.counts().used();
      if (estimate != null && frames > 0) {
        weight += frames;
        value += frames * estimate.value();
        low += frames * estimate.lo95();
        high += frames * estimate.hi95();
        only = Optional.of(estimate);
        with++;
      }
    }
    return with < 2
        ? only
        : Optional.of(
            new Estimate(
                value / weight, Math.min(low, value) / weight, Math.max(high, value) / weight));
  }

  /** The number; empty when no run has it. */
  static OptionalDouble number(NightResult night, Function<RunResult, Double> figure) {
    double weight = 0;
    double sum = 0;
    for (RunResult run : night.runs()) {
      Double number = figure.apply(run);
      if (number != null) {
        weight += run.counts().used();
        sum += run.counts().used() * number;
      }
    }
    return weight == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / weight);
  }
}
