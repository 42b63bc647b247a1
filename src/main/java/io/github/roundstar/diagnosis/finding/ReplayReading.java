package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Replay;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the replay says of one axis: the row of the settings in use, and the row that moves the star
 * least.
 *
 * @param current settings in use
 * @param best settings with the least motion of the star
 */
record ReplayReading(Replay current, Replay best) {
  /** A row stands for the settings in use only if its gain is as near as this. */
  private static final double NEAR = 0.1;

  /** The axis' rows; empty when there is no replay or none of its rows is near the gain in use. */
  static Optional<ReplayReading> of(NightResult night, Axis axis, double gain) {
    if (night.replay() == null) {
      return Optional.empty();
    }
    String name = axis.name().toLowerCase(Locale.ROOT);
    List<Replay> rows = night.replay().stream().filter(row -> name.equals(row.axis())).toList();
    double cadence = Pooled.number(night, run -> run.cadenceSeconds()).orElse(0);
    Optional<Replay> current =
        rows.stream()
            .filter(row -> Math.abs(row.gain() - gain) <= NEAR)
            .min(
                Comparator.comparingDouble((Replay row) -> Math.abs(row.cadenceSeconds() - cadence))
                    .thenComparingDouble(row -> Math.abs(row.gain() - gain))
                    .thenComparingDouble(Replay::deadbandArcsec));
    return current.map(
        row ->
            new ReplayReading(
                row,
                rows.stream()
                    .min(Comparator.comparingDouble(Replay::predictedMotionRmsArcsec))
                    .orElseThrow()));
  }
}
