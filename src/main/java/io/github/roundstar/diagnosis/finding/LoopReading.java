package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the loop of one axis behaved over the night.
 *
 * @param gain share of the offset that one pulse takes away
 * @param lag1 autocorrelation of the offsets from frame to frame, with the interval of a white
 *     series of as many frames (2 / sqrt n)
 */
record LoopReading(Optional<Estimate> gain, Optional<Estimate> lag1) {
  private static final AxisLoopResult UNKNOWN =
      new AxisLoopResult(null, null, null, null, null, null, null, null, null, null, null);

  static LoopReading of(NightResult night, Axis axis) {
    OptionalDouble lag1 = Pooled.number(night, run -> loop(run, axis).lag1Autocorrelation());
    int frames = night.runs().stream().mapToInt(run -> run.counts().used()).sum();
    return new LoopReading(
        Pooled.estimate(night, run -> loop(run, axis).gain()),
        lag1.isEmpty() || frames == 0
            ? Optional.empty()
            : Optional.of(Estimate.symmetric(lag1.getAsDouble(), 2 / Math.sqrt(frames))));
  }

  private static AxisLoopResult loop(RunResult run, Axis axis) {
    AxisLoopResult loop =
        run.loop() == null ? null : axis == Axis.RA ? run.loop().ra() : run.loop().dec();
    return loop == null ? UNKNOWN : loop;
  }
}
