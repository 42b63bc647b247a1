package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * How the loop of one axis behaved over the night.
 *
 * @param gain share of the offset that one pulse takes away
 * @param lag1 autocorrelation of the offsets from frame to frame, with the interval of a white
 *     series of as many frames (2 / sqrt n)
 */
record LoopReading(Optional<Estimate> gain, Optional<Estimate> lag1) {
  static LoopReading of(NightResult night, Axis axis) {
    OptionalDouble lag1 =
        Pooled.number(night, run -> figure(run, axis, AxisLoopResult::lag1Autocorrelation));
    int frames = night.runs().stream().mapToInt(run -> run.counts().used()).sum();
    return new LoopReading(
        Pooled.estimate(night, run -> figure(run, axis, AxisLoopResult::gain)),
        lag1.isEmpty() || frames == 0
            ? Optional.empty()
            : Optional.of(Estimate.symmetric(lag1.getAsDouble(), 2 / Math.sqrt(frames))));
  }

  /** A figure of a run's loop; null when the run has none. */
  private static <T> T figure(RunResult run, Axis axis, Function<AxisLoopResult, T> figure) {
    AxisLoopResult loop =
        run.loop() == null ? null : axis == Axis.RA ? run.loop().ra() : run.loop().dec();
    return loop == null ? null : figure.apply(loop);
  }
}
