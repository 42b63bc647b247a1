package io.github.roundstar.ingest.layout.choice;

import io.github.roundstar.ingest.layout.text.Words;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The offset of a log's clock from UTC, as texts tell it: by name, number or sentence. */
final class ClockZone {
  private static final Pattern ZONE =
      Pattern.compile(
          "(?i)(?<!\\p{L})(?:utc|gmt|ut) ?([+\\u2212-]) ?([0-9]{1,2})(?::?([0-9]{2}))?(?![0-9.])");

  private static final Pattern SIGNED =
      Pattern.compile("(?<![0-9])([+\\u2212-]) ?([0-9]{1,2})(?::?([0-9]{2}))?(?![0-9.,])");

  private static final Pattern CIVIL = Pattern.compile("(?<![\\p{L}])([A-Z]{3,4})(?![\\p{L}])");

  /** Common names of civil times with one meaning; those that also are words are left out. */
  private static final Map<String, String> CIVIL_HOURS =
      Map.ofEntries(
          Map.entry("CET", "+01:00"),
          Map.entry("MEZ", "+01:00"),
          Map.entry("CEST", "+02:00"),
          Map.entry("MESZ", "+02:00"),
          Map.entry("WET", "+00:00"),
          Map.entry("EET", "+02:00"),
          Map.entry("EEST", "+03:00"),
          Map.entry("BRT", "-03:00"),
          Map.entry("EDT", "-04:00"),
          Map.entry("CDT", "-05:00"),
          Map.entry("MDT", "-06:00"),
          Map.entry("PST", "-08:00"),
          Map.entry("PDT", "-07:00"),
          Map.entry("AEST", "+10:00"),
          Map.entry("AEDT", "+11:00"),
          Map.entry("NZST", "+12:00"),
          Map.entry("NZDT", "+13:00"),
          Map.entry("JST", "+09:00"),
          Map.entry("SAST", "+02:00"));

  private static final List<Set<String>> COUNT_WORDS =
      List.of(
          Set.of("one", "eine", "ein", "une", "un", "una", "uma", "um", "een"),
          Set.of("two", "zwei", "deux", "dos", "due", "duas", "dois", "twee"),
          Set.of("three", "drei", "trois", "tres", "tre", "drie"));

  private ClockZone() {}

  static boolean saysUtc(String line) {
    List<String> tokens = Words.tokens(line);
    return tokens.contains("utc") || tokens.contains("gmt") || tokens.contains("ut");
  }

  /** The offset that a text tells, by name, number or sentence. */
  static Optional<ZoneOffset> of(String line) {
    Matcher zone = ZONE.matcher(line);
    if (zone.find()) {
      return offset(zone);
    }
    Words words = Words.of(line);
    Matcher civil = CIVIL.matcher(line);
    while (civil.find()) {
      String hours = CIVIL_HOURS.get(civil.group(1));
      if (hours != null) {
        return Optional.of(ZoneOffset.of(hours));
      }
    }
    if (words.has("zone") || words.says("tz")) {
      Matcher signed = SIGNED.matcher(line);
      if (signed.find()) {
        return offset(signed);
      }
    }
    boolean utc = saysUtc(line);
    boolean ahead = words.has("ahead");
    boolean behind = words.has("behind");
    if (utc && words.has("hours") && ahead != behind) {
      List<String> tokens = words.tokens();
      for (int i = 1; i < tokens.size(); i++) {
        int count = Words.of(tokens.get(i)).has("hours") ? count(tokens.get(i - 1)) : 0;
        if (count > 0) {
          return Optional.of(ZoneOffset.ofHours(ahead ? count : -count));
        }
      }
    }
    return Optional.empty();
  }

  private static int count(String token) {
    for (int i = 0; i < COUNT_WORDS.size(); i++) {
      if (COUNT_WORDS.get(i).contains(token)) {
        return i + 1;
      }
    }
    return token.matches("[0-9]|1[0-4]") ? Integer.parseInt(token) : 0;
  }

  private static Optional<ZoneOffset> offset(Matcher zone) {
    int hours = Integer.parseInt(zone.group(2));
    int minutes = zone.group(3) == null ? 0 : Integer.parseInt(zone.group(3));
    int sign = zone.group(1).equals("+") ? 1 : -1;
    return hours <= 14 && minutes < 60
        ? Optional.of(ZoneOffset.ofHoursMinutes(sign * hours, sign * minutes))
        : Optional.empty();
  }
}
