package io.github.roundstar.compare;

import io.github.roundstar.results.NightResult;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * A night with its evening's date.
 *
 * @param result its figures, without what only its own page needs
 * @param evening date of the evening
 * @param start its first frame
 */
record DatedNight(NightResult result, LocalDate evening, Instant start) {
  private static final int DATE_LETTERS = 10;
  private static final double SECONDS_PER_DAY = 86_400;

  static boolean isDated(NightResult night) {
    return night.night().startUtc() != null
        && night.night().date().matches("\\d{4}-\\d\\d-\\d\\d.*");
  }

  static DatedNight of(NightResult night) {
    return new DatedNight(
        night,
        LocalDate.parse(night.night().date().substring(0, DATE_LETTERS)),
        Instant.parse(night.night().startUtc()));
  }

  double daysSince(Instant other) {
    return Duration.between(other, start).toSeconds() / SECONDS_PER_DAY;
  }

  static List<NightResult> results(List<DatedNight> nights) {
    return nights.stream().map(DatedNight::result).toList();
  }
}
