package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.NightSummary;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.function.Function;

/** A figure of the night; where the result has it run by run only, the mean over the runs. */
final class OverRuns {
  private OverRuns() {}

  /**
   * The night's own figure, else the mean over its runs weighted by their length, their intervals
   * averaged too, as what is not known of a mount is the same in all runs.
   *
   * @param ofNight null where the night does not have it
   * @param ofRun null where the run does not have it
   */
  static Optional<Estimate> of(
      NightResult result,
      Function<NightSummary, Estimate> ofNight,
      Function<RunResult, Estimate> ofRun) {
    Estimate night = ofNight.apply(result.night());
    return night != null ? Optional.of(night) : mean(result, ofRun);
  }

  /** The mean over the runs that have the figure. */
  static Optional<Estimate> mean(NightResult result, Function<RunResult, Estimate> ofRun) {
    double weight = 0;
    double value = 0;
    double half = 0;
    for (RunResult run : result.runs()) {
      Estimate estimate = ofRun.apply(run);
      if (estimate != null) {
        double seconds = Math.max(run.durationSeconds(), 1);
        weight += seconds;
        value += seconds * estimate.value();
        half += seconds * (estimate.hi95() - estimate.lo95()) / 2;
      }
    }
    return weight == 0
        ? Optional.empty()
        : Optional.of(Estimate.symmetric(value / weight, half / weight));
  }

  /** Mean of a setting over the runs that tell it, weighted by their length. */
  static Optional<Double> setting(NightResult result, Function<RunResult, Double> ofRun) {
    return mean(
            result,
            run ->
                Optional.ofNullable(ofRun.apply(run))
                    .map(value -> Estimate.symmetric(value, 0))
                    .orElse(null))
        .map(Estimate::value);
  }
}
