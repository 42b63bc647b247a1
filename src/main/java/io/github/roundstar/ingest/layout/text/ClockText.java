package io.github.roundstar.ingest.layout.text;

import io.github.roundstar.ingest.layout.TimeForm.DateOrder;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A date, a time of day, or both, in any order of parts: {@code 2026-03-14T20:15:30.25+01:00},
 * {@code 14.3.2026 20:15:30}, {@code 8:15:30 pm, Mar 14 2026}.
 *
 * @param date the date
 * @param time the time of day
 * @param offset offset from UTC
 */
public record ClockText(
    Optional<LocalDate> date, Optional<LocalTime> time, Optional<ZoneOffset> offset) {
  private static final int LONGEST = 60;

  /** Digits of the shortest time, 8:15, or date, Mar 1 26, and of a date and time without signs. */
  private static final int FEWEST_DIGITS = 3;

  private static final int COMPACT_DIGITS = 14;
  private static final Pattern TIME =
      Pattern.compile(
          "(?<![0-9])([0-9]{1,2})[:hH]([0-9]{2})(?:[:mM\u2032']([0-9]{2})(?:[.,:]([0-9]{1,9}))?s?)?"
              + "(?: ?([aApP])[.]?(?: ?[mM][.]?)?(?![A-Ya-y]))?");
  private static final Pattern COMPACT_TIME =
      Pattern.compile(
          "(?<=[0-9]{8}[T _-])([0-9]{2})([0-9]{2})([0-9]{2})(?:[.,]([0-9]{1,9}))?()(?![0-9:])");
  private static final Pattern OFFSET =
      Pattern.compile(
          "(?:([Zz]|UTC|GMT|UT)(?![A-Za-z+\u2212-])|(?:UTC|GMT|UT)?([+\u2212-])([0-9]{1,2}):?([0-9]{2})?)(?![0-9])");
  private static final Pattern DATE =
      Pattern.compile(
          "([0-9]{1,4}|\\p{L}{3,10})(?:st|nd|rd|th|er|\u00ba)?[-/. ,]{1,2}(?:de )?([0-9]{1,2}|\\p{L}{3,10})[-/. ,]{1,2}(?:de )?([0-9]{2,4})");
  private static final Pattern ELAPSED =
      Pattern.compile(
          "\\+?(?:([0-9]{1,3})[:h] ?)?([0-9]{1,3})(?:[:m'] ?)([0-9]{1,2}(?:[.,][0-9]{1,9})?)[s\"]?");
  private static final Pattern COMPACT =
      Pattern.compile("(?<![0-9])([0-9]{4})([0-9]{2})([0-9]{2})(?![0-9])");

  /** Reads a text; whatever cannot be read as such is empty. */
  public static ClockText of(String text, DateOrder order) {
    String rest = text.strip();
    if (rest.length() > LONGEST) {
      return new ClockText(Optional.empty(), Optional.empty(), Optional.empty());
    }
    Optional<LocalTime> time = Optional.empty();
    Optional<ZoneOffset> offset = Optional.empty();
    int digits = 0;
    boolean colon = false;
    for (int i = 0; i < rest.length(); i++) {
      boolean digit = isDigit(rest.charAt(i));
      digits += digit ? 1 : 0;
      colon |= !digit && i > 0 && isDigit(rest.charAt(i - 1)) && ":hH".indexOf(rest.charAt(i)) >= 0;
    }
    if (digits < FEWEST_DIGITS) {
      return new ClockText(Optional.empty(), Optional.empty(), Optional.empty());
    }
    Matcher clock = TIME.matcher(rest);
    boolean found = colon && clock.find();
    if (!found && digits >= COMPACT_DIGITS) {
      clock = COMPACT_TIME.matcher(rest);
      found = clock.find();
    }
    if (found) {
      time = time(clock);
      String after = rest.substring(clock.end()).strip();
      Matcher zone = OFFSET.matcher(after);
      if (zone.lookingAt()) {
        offset = offset(zone);
        after = after.substring(zone.end());
      }
      rest = withoutJoint(rest, clock.start()) + " " + after;
    }
    return new ClockText(date(rest.strip(), order), time, offset);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** What stands before a time, without the signs that join a date to it. */
  private static String withoutJoint(String text, int end) {
    int to = end;
    while (to > 0 && "T ,".indexOf(text.charAt(to - 1)) >= 0) {
      to--;
    }
    return text.substring(0, to);
  }

  /** Hours, minutes and seconds, or minutes and seconds, that passed [s]. */
  public static OptionalDouble elapsedSeconds(String text) {
    Matcher parts = ELAPSED.matcher(text.strip());
    if (!parts.matches()) {
      return OptionalDouble.empty();
    }
    double hours = parts.group(1) == null ? 0 : Integer.parseInt(parts.group(1));
    double seconds = Double.parseDouble(parts.group(3).replace(',', '.'));
    return OptionalDouble.of(hours * 3600 + Integer.parseInt(parts.group(2)) * 60 + seconds);
  }

  private static Optional<LocalTime> time(Matcher clock) {
    int hour = Integer.parseInt(clock.group(1));
    if (clock.group(5) != null) {
      hour = hour % 12 + (clock.group(5).equalsIgnoreCase("p") ? 12 : 0);
    }
    String fraction = clock.group(4) == null ? "" : clock.group(4);
    int nanos = Integer.parseInt((fraction + "000000000").substring(0, 9));
    int second = clock.group(3) == null ? 0 : Integer.parseInt(clock.group(3));
    try {
      return Optional.of(LocalTime.of(hour, Integer.parseInt(clock.group(2)), second, nanos));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<ZoneOffset> offset(Matcher zone) {
    if (zone.group(1) != null) {
      return Optional.of(ZoneOffset.UTC);
    }
    int minutes = zone.group(4) == null ? 0 : Integer.parseInt(zone.group(4));
    int sign = zone.group(2).equals("+") ? 1 : -1;
    try {
      return Optional.of(
          ZoneOffset.ofHoursMinutes(sign * Integer.parseInt(zone.group(3)), sign * minutes));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> date(String text, DateOrder order) {
    Matcher compact = COMPACT.matcher(text);
    if (compact.find()) {
      return date(compact.group(1), compact.group(2), compact.group(3));
    }
    Matcher parts = DATE.matcher(text);
    boolean found = parts.find();
    while (found && !isDate(parts)) {
      found = parts.find(parts.start() + 1);
    }
    if (!found) {
      return Optional.empty();
    }
    String one = parts.group(1);
    String two = parts.group(2);
    String three = parts.group(3);
    if (one.length() == 4 && Character.isDigit(one.charAt(0))) {
      return date(one, two, three);
    }
    if (month(one) > 0 && !Character.isDigit(one.charAt(0))) {
      return date(three, one, two);
    }
    boolean word = !Character.isDigit(two.charAt(0));
    return switch (order) {
      case MDY -> word ? date(three, two, one) : date(three, one, two);
      case DMY -> date(three, two, one);
      case YMD -> three.length() == 4 ? date(three, two, one) : date(one, two, three);
    };
  }

  /** A day of the week before a date is none of its parts. */
  private static boolean isDate(Matcher parts) {
    boolean words = false;
    for (int part = 1; part <= 2; part++) {
      String text = parts.group(part);
      if (!Character.isDigit(text.charAt(0))) {
        if (words || month(text) == 0) {
          return false;
        }
        words = true;
      }
    }
    return true;
  }

  private static int month(String text) {
    if (Character.isDigit(text.charAt(0))) {
      return Integer.parseInt(text);
    }
    return Words.month(text);
  }

  private static Optional<LocalDate> date(String year, String month, String day) {
    try {
      int y = Integer.parseInt(year);
      return Optional.of(LocalDate.of(y < 100 ? 2000 + y : y, month(month), Integer.parseInt(day)));
    } catch (DateTimeException | NumberFormatException e) {
      return Optional.empty();
    }
  }
}
