package io.github.roundstar.report.words;

import io.github.roundstar.results.LocalTime;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * Times of day in UTC and, where it is known, in the local time of the site beside it.
 *
 * @param local the local time; nothing where neither log nor longitude tells it
 */
public record Clock(Optional<LocalTime> local) {
  /** {@code 21:04}, UTC. */
  public String utc(Instant instant) {
    return Times.clock(instant);
  }

  /** {@code 23:04}; empty where the local time is not known. */
  public String local(Instant instant) {
    return local.map(time -> Times.clock(instant.plusSeconds(time.offsetSeconds()))).orElse("");
  }

  /** {@code 21:04 (23:04)}. */
  public String both(Instant instant) {
    return utc(instant) + inBrackets(instant);
  }

  /** {@code (23:04)} with the blank before it; empty where the local time is not known. */
  public String inBrackets(Instant instant) {
    return local.isEmpty() ? "" : "\u00a0(" + local(instant) + ")";
  }

  /** What times are, for a heading: {@code UTC (local)}. */
  public String name() {
    return local.isEmpty() ? "UTC" : "UTC (local)";
  }

  /** {@code 21:04 to 23:10 UTC, 23:04 to 01:10 local time (log's offset, +02:00)}. */
  public String span(Instant from, Instant to) {
    String utc = utc(from) + " to " + utc(to) + " UTC";
    return local
        .map(
            time ->
                utc
                    + ", "
                    + local(from)
                    + " to "
                    + local(to)
                    + " local time ("
                    + source(time)
                    + ")")
        .orElse(utc);
  }

  /** {@code local +02:00}; empty where it is not known. */
  public String explained() {
    return local.map(time -> "local " + offset(time)).orElse("");
  }

  private static String offset(LocalTime time) {
    int minutes = Math.round(time.offsetSeconds() / 60f);
    return String.format(
        Locale.ROOT,
        "%s%02d:%02d",
        minutes < 0 ? "\u2212" : "+",
        Math.abs(minutes) / 60,
        Math.abs(minutes) % 60);
  }

  private static String source(LocalTime time) {
    String offset = offset(time);
    return time.source() == LocalTime.Source.LOG
        ? "log's offset, " + offset
        : "mean solar time by the longitude, " + offset;
  }
}
