package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Replay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the replay says of one axis: the row of the settings in use, and the row of the settings to
 * take with the periodic error as it is.
 *
 * @param current settings in use
 * @param best settings to take at the cadence in use: longer exposures are another question
 */
record ReplayReading(Replay current, Replay best) {
  /** The axis' rows; empty when there is no replay. */
  static Optional<ReplayReading> of(NightResult night, Axis axis) {
    if (night.replay() == null) {
      return Optional.empty();
    }
    String name = axis.name().toLowerCase(Locale.ROOT);
    List<Replay> rows =
        night.replay().stream().filter(row -> name.equals(row.axis()) && !row.trained()).toList();
    return rows.stream()
        .filter(Replay::current)
        .findFirst()
        .map(
            current ->
                new ReplayReading(
                    current,
                    rows.stream()
                        .filter(Replay::best)
                        .filter(row -> row.cadenceSeconds() == current.cadenceSeconds())
                        .findFirst()
                        .orElse(current)));
  }
}
