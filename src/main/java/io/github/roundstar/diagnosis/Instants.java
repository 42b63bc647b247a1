package io.github.roundstar.diagnosis;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Instants as the result writes them: ISO 8601, UTC, to the millisecond. */
final class Instants {
  private Instants() {}

  static String text(Instant instant) {
    return instant.plusNanos(500_000).truncatedTo(ChronoUnit.MILLIS).toString();
  }
}
