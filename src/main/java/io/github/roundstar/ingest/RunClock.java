package io.github.roundstar.ingest;

import io.github.roundstar.formats.FormatException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Puts the rows of all runs on one clock: seconds since the first {@code utc}, or since the {@code
 * start} that holds for the first run. Without any of them the clock is the log's own.
 */
final class RunClock {
  private static final double NANOS = 1e9;

  private final boolean utc;
  private final HeaderMeta meta;
  private final Map<Integer, Double> shifts = new HashMap<>();
  private Instant zero;
  private long zeroNanos;
  private int lastRun;
  private double lastShift;
  private boolean shiftKnown;

  RunClock(ColumnTable columns, HeaderMeta meta) {
    this.utc = columns.has(GuideColumn.UTC);
    this.meta = meta;
  }

  /** Whether the log has absolute time. */
  boolean isDated() {
    return utc || meta.common().start().isPresent() || meta.firstStart().isPresent();
  }

  /** The row's time on the file's clock [s]. */
  double fileSeconds(TableRow row, int run) throws FormatException {
    if (utc) {
      if (zero == null) {
        zeroNanos = row.epochNanos;
        zero = Instant.ofEpochSecond(0, zeroNanos);
      }
      return (row.epochNanos - zeroNanos) / NANOS;
    }
    if (!shiftKnown || run != lastRun) {
      lastShift = shift(run);
      lastRun = run;
      shiftKnown = true;
    }
    return row.timeSeconds + lastShift;
  }

  private double shift(int run) throws FormatException {
    Double known = shifts.get(run);
    if (known != null) {
      return known;
    }
    Optional<Instant> start = meta.of(run).start().map(OffsetDateTime::toInstant);
    if (start.isEmpty() && isDated()) {
      throw meta.noStart(run);
    }
    if (zero == null) {
      zero = start.orElse(null);
    }
    double shift = start.map(instant -> seconds(Duration.between(zero, instant))).orElse(0.0);
    shifts.put(run, shift);
    return shift;
  }

  private static double seconds(Duration duration) {
    return duration.getSeconds() + duration.getNano() / NANOS;
  }

  /** The instant of a time on the file's clock, to the nanosecond. */
  Optional<Instant> instantAt(double fileSeconds) {
    return Optional.ofNullable(zero).map(at -> at.plusNanos(Math.round(fileSeconds * NANOS)));
  }
}
