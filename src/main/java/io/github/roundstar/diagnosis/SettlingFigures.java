package io.github.roundstar.diagnosis;

import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.SettlingTimes;
import io.github.roundstar.results.Settling;
import io.github.roundstar.signal.Quantile;
import java.util.List;
import java.util.stream.IntStream;

/** Time lost after dithers as the result shows it. */
final class SettlingFigures {
  /** What stands where a fault of the tool took the figures. */
  static final Settling NONE = new Settling(0, null, null, 0);

  private SettlingFigures() {}

  static Settling of(List<GuideRun> runs, Reasons.Scope scope) {
    int dithers =
        runs.stream()
            .mapToInt(
                run ->
                    (int)
                        IntStream.range(0, run.frames().size())
                            .filter(run.frames()::ditherStart)
                            .count())
            .sum();
    double[] seconds =
        SettlingTimes.seconds(runs).stream().mapToDouble(Double::doubleValue).toArray();
    double hours = 0;
    for (double time : seconds) {
      hours += time / 3600;
    }
    return new Settling(
        dithers,
        quantile("/medianSeconds", seconds, 0.5, scope),
        quantile("/p90Seconds", seconds, 0.9, scope),
        hours);
  }

  private static Double quantile(String key, double[] seconds, double share, Reasons.Scope scope) {
    return scope.orNull(
        "/settling" + key,
        seconds.length == 0
            ? Answer.none("the log has no dither after which the star came to rest")
            : Answer.of(Quantile.of(seconds, share)));
  }
}
