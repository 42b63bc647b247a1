package io.github.roundstar.formats;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * ISO 8601 dates with time: {@code 2026-03-14T20:15:30.25+01:00}, seconds and their fraction
 * optional, {@code T} or one space between, {@code Z} or an offset at the end. A leap second counts
 * as the second after it, as a computer's clock does. Years 1900 to 2199.
 */
public final class IsoTime {
  private static final long NANOS = 1_000_000_000L;

  private IsoTime() {}

  /** Date and time with its offset; empty if the text is anything else, or has no offset. */
  public static Optional<OffsetDateTime> withOffset(String text) {
    byte[] bytes = text.strip().getBytes(UTF_8);
    Cursor cursor = new Cursor(bytes, 0, bytes.length);
    long nanos = cursor.localNanos();
    int offset = cursor.offsetSeconds();
    if (cursor.failed || !cursor.offsetSeen) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          Instant.ofEpochSecond(0, nanos - offset * NANOS)
              .atOffset(ZoneOffset.ofTotalSeconds(offset)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Nanoseconds since 1970, UTC where no offset is given; {@code Long.MIN_VALUE} if malformed. */
  static long epochNanos(byte[] text, int from, int to) {
    Cursor cursor = new Cursor(text, from, to);
    long nanos = cursor.localNanos() - cursor.offsetSeconds() * NANOS;
    return cursor.failed ? Long.MIN_VALUE : nanos;
  }

  private static final class Cursor {
    private final byte[] text;
    private final int to;
    private int at;
    private boolean failed;
    private boolean offsetSeen;

    Cursor(byte[] text, int from, int to) {
      this.text = text;
      this.at = from;
      this.to = to;
    }

    long localNanos() {
      int year = digits(4, 1900, 2199);
      expect('-');
      int month = digits(2, 1, 12);
      expect('-');
      int day = digits(2, 1, 31);
      if (!accept('T') && !accept('t')) {
        expect(' ');
      }
      int hour = digits(2, 0, 23);
      expect(':');
      int minute = digits(2, 0, 59);
      int second = accept(':') ? digits(2, 0, 60) : 0;
      long nanos = accept('.') || accept(',') ? fraction() : 0;
      if (failed || day > 28 && day > LocalDate.of(year, month, 1).lengthOfMonth()) {
        failed = true;
        return 0;
      }
      long days = LocalDate.of(year, month, day).toEpochDay();
      return (days * 86_400 + hour * 3600 + minute * 60 + second) * NANOS + nanos;
    }

    int offsetSeconds() {
      if (at == to) {
        return 0;
      }
      offsetSeen = true;
      int sign = 0;
      if (!accept('Z') && !accept('z')) {
        sign = accept('-') ? -1 : 1;
        if (sign > 0) {
          expect('+');
        }
      }
      int hours = sign == 0 ? 0 : digits(2, 0, 18);
      int minutes = sign != 0 && (accept(':') || at < to) ? digits(2, 0, 59) : 0;
      failed |= at != to;
      return sign * (hours * 3600 + minutes * 60);
    }

    private long fraction() {
      long nanos = 0;
      long unit = NANOS / 10;
      int from = at;
      while (at < to && text[at] >= '0' && text[at] <= '9') {
        nanos += unit * (text[at++] - '0');
        unit /= 10;
      }
      failed |= at == from;
      return nanos;
    }

    private int digits(int count, int min, int max) {
      int value = 0;
      for (int i = 0; i < count; i++) {
        if (at >= to || text[at] < '0' || text[at] > '9') {
          failed = true;
          return min;
        }
        value = value * 10 + text[at++] - '0';
      }
      failed |= value < min || value > max;
      return Math.max(min, Math.min(max, value));
    }

    private void expect(char c) {
      failed |= !accept(c);
    }

    private boolean accept(char c) {
      if (at < to && text[at] == c) {
        at++;
        return true;
      }
      return false;
    }
  }
}
