package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Replay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What the replay says of one axis: the row of the settings in use, and the row that moves the star
 * least with the periodic error as it is.
 *
 * @param current settings in use
 * @param best settings with the least motion of the star
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
    return first(rows, Replay::current)
        .flatMap(
            current -> first(rows, Replay::best).map(best -> new ReplayReading(current, best)));
  }

  private static Optional<Replay> first(List<Replay> rows, Predicate<Replay> which) {
    return rows.stream().filter(which).findFirst();
  }
}
