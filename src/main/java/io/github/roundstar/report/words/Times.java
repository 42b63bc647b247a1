package io.github.roundstar.report.words;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.regex.Pattern;

/** Periods, durations and times of day as a report writes them; a unit stays with its number. */
public final class Times {
  private static final char SPACE = '\u00a0';

  /** With whatever units and words its ends have. */
  private static final Pattern INTERVAL = Pattern.compile("\\([^()]*\\.\\.[^()]*\\)");

  private Times() {}

  /** {@code 7 min 59 s (479.1 s)}; plain seconds below a minute. */
  public static String period(double seconds) {
    String exact = Numbers.fixed(seconds, 1) + SPACE + "s";
    return seconds < 60 ? exact : shortPeriod(seconds) + " (" + exact + ")";
  }

  /** {@code 7 min 59 s}, {@code 8 min}, {@code 42 s}, {@code 1 h 3 min}. */
  public static String shortPeriod(double seconds) {
    if (seconds < 9.95) {
      return Numbers.fixed(seconds, 1) + SPACE + "s";
    }
    long whole = Math.round(seconds);
    if (whole < 60) {
      return Long.toString(whole) + SPACE + "s";
    }
    if (whole < 3600) {
      return joined(whole / 60, "min", whole % 60, "s");
    }
    long minutes = Math.round(seconds / 60);
    return joined(minutes / 60, "h", minutes % 60, "min");
  }

  /** {@code 5.3 h}; minutes below an hour, seconds below a minute. */
  public static String duration(double seconds) {
    if (seconds < 60) {
      return Numbers.fixed(seconds, 0) + SPACE + "s";
    }
    return seconds < 3600
        ? Numbers.fixed(seconds / 60, 0) + SPACE + "min"
        : Numbers.fixed(seconds / 3600, 1) + SPACE + "h";
  }

  /** Time of day in UTC, {@code 21:04}. */
  public static String clock(Instant instant) {
    var time = instant.atOffset(ZoneOffset.UTC).toLocalTime();
    return String.format(Locale.ROOT, "%02d:%02d", time.getHour(), time.getMinute());
  }

  /**
   * A text whose durations, {@code 7 min 59 s}, shares, {@code 67 %}, and intervals do not break
   * between two lines.
   */
  public static String unbroken(String text) {
    String joined =
        text.replaceAll("(?<=\\d) \\.\\. (?=[-\u2212\\d])", "\u00a0..\u00a0")
            .replaceAll("(?<=\\d) (?=(h|min|s)\\b|%)", "\u00a0")
            .replaceAll("(?<=\\d\u00a0(h|min)) (?=\\d)", "\u00a0");
    return INTERVAL.matcher(joined).replaceAll(found -> found.group().replace(' ', SPACE));
  }

  private static String joined(long large, String largeUnit, long small, String smallUnit) {
    String head = Long.toString(large) + SPACE + largeUnit;
    return small == 0 ? head : head + SPACE + small + SPACE + smallUnit;
  }
}
