package io.github.roundstar.diagnosis;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Instants as the result writes them: ISO 8601, UTC, to the millisecond. */
final class Instants {
  static final String UNDATED =
      "the log has no absolute time: add start to its header, or a column utc";

  private Instants() {}

  static String text(Instant instant) {
    return instant.plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
