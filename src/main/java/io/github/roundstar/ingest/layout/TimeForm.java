package io.github.roundstar.ingest.layout;

import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How times are written.
 *
 * @param kind what the numbers count
 * @param order order of day, month and year in dates
 * @param utcOffset offset of the log's clock from UTC; UTC is assumed where it is not known
 * @param mark which part of the exposure the time marks: {@code start}, {@code middle}, {@code end}
 * @param stepSeconds time from frame to frame, where numbers count frames [s]
 */
public record TimeForm(
    Kind kind,
    DateOrder order,
    Optional<ZoneOffset> utcOffset,
    Optional<String> mark,
    OptionalDouble stepSeconds) {
  /** Times that tell more than the number of the frame. */
  public TimeForm(
      Kind kind, DateOrder order, Optional<ZoneOffset> utcOffset, Optional<String> mark) {
    this(kind, order, utcOffset, mark, OptionalDouble.empty());
  }

  /** What the numbers count. */
  public enum Kind {
    /** Seconds since the run or the log began. */
    ELAPSED_S(1),
    /** Milliseconds since the run or the log began. */
    ELAPSED_MS(1e-3),
    /** Minutes since the run or the log began. */
    ELAPSED_MIN(60),
    /** Frames since the run or the log began, a fixed time apart. */
    FRAMES(1),
    /** Hours, minutes and seconds since the run or the log began. */
    ELAPSED_HMS(1),
    /** Time of day. */
    CLOCK(0),
    /** Date and time of day, in one column or two. */
    DATE_TIME(0),
    /** Julian date. */
    JD(0),
    /** Modified Julian date. */
    MJD(0),
    /** Seconds since 1970. */
    UNIX_S(0),
    /** Milliseconds since 1970. */
    UNIX_MS(0);

    private final double seconds;

    Kind(double seconds) {
      this.seconds = seconds;
    }

    /** Seconds per unit where time is elapsed time; else 0. */
    public double seconds() {
      return seconds;
    }

    /** Whether it counts from the beginning of a run or log. */
    public boolean isElapsed() {
      return seconds > 0;
    }

    /** The word for it in a layout file. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Order of the parts of a date. */
  public enum DateOrder {
    /** Year, month, day. */
    YMD,
    /** Day, month, year. */
    DMY,
    /** Month, day, year. */
    MDY
  }
}
