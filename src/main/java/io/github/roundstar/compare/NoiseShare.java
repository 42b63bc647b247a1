package io.github.roundstar.compare;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.Loop;
import io.github.roundstar.results.NightResult;
import java.util.Optional;
import java.util.function.Function;

/**
 * How often the square of the noise floor stands in the mean square of the logged offsets: once by
 * itself, and once more for the pulses that answer it. A proportional loop of gain g without
 * deadband or delay turns white noise of variance 1 into offsets of variance 2 / (2 - g): the
 * recursion x' = (1 - g) x - g n, logged x + n.
 *
 * @param factor 2 / (2 - g)
 * @param error standard error of it
 */
record NoiseShare(double factor, double error) {
  /** Gains are set between almost nothing and 0.7; 0.4 is usual: common practice, no source. */
  private static final NoiseShare UNKNOWN_GAIN = new NoiseShare(1.25, 0.15);

  /** A deadband or delay makes the factor differ from the formula by about this. */
  private static final double MODEL_ERROR = 0.07;

  /** From the gain that the night's result gives; a usual one where it gives none. */
  static NoiseShare of(NightResult night, Function<Loop, AxisLoopResult> axis) {
    Optional<Estimate> gain =
        OverRuns.mean(
            night,
            run ->
                Optional.ofNullable(run.loop()).map(axis).map(AxisLoopResult::gain).orElse(null));
    if (gain.isEmpty()) {
      return UNKNOWN_GAIN;
    }
    double bounded = Math.max(0, Math.min(1, gain.get().value()));
    return new NoiseShare(2 / (2 - bounded), MODEL_ERROR);
  }

  boolean known() {
    return !equals(UNKNOWN_GAIN);
  }
}
