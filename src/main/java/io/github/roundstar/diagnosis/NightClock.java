package io.github.roundstar.diagnosis;

import io.github.roundstar.model.GuideRun;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Places all runs of a night on one clock: seconds since the night's first frame. */
final class NightClock {
  /** Runs without absolute time that start anew at zero are set this far apart [s]. */
  private static final double UNDATED_GAP_SECONDS = 60;

  private final List<Double> shifts;
  private final Optional<Instant> start;

  private NightClock(List<Double> shifts, Optional<Instant> start) {
    this.shifts = List.copyOf(shifts);
    this.start = start;
  }

  /** The clock of runs in order of time. */
  static NightClock of(List<GuideRun> runs) {
    Optional<Instant> start =
        runs.stream()
            .filter(run -> run.frames().size() > 0)
            .findFirst()
            .flatMap(run -> run.instantAt(run.frames().timeSeconds(0)));
    List<Double> shifts = new ArrayList<>();
    double end = Double.NEGATIVE_INFINITY;
    for (GuideRun run : runs) {
      double shift = shift(run, start, shifts, end);
      shifts.add(shift);
      if (run.frames().size() > 0) {
        end = shift + run.frames().timeSeconds(run.frames().size() - 1);
      }
    }
    return new NightClock(shifts, start);
  }

  private static double shift(
      GuideRun run, Optional<Instant> start, List<Double> before, double end) {
    if (start.isPresent() && run.start().isPresent()) {
      Duration since = Duration.between(start.get(), run.start().get());
      return since.getSeconds() + since.getNano() * 1e-9;
    }
    double first = run.frames().size() == 0 ? 0 : run.frames().timeSeconds(0);
    if (before.isEmpty()) {
      return -first;
    }
    double same = before.get(before.size() - 1);
    return same + first > end ? same : end + UNDATED_GAP_SECONDS - first;
  }

  /** Instant of the night's first frame, where the log has absolute time. */
  Optional<Instant> start() {
    return start;
  }

  /** What to add to the times of a run, by its index [s]. */
  double shiftSeconds(int index) {
    return shifts.get(index);
  }
}
