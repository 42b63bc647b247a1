package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.results.Exposure;
import io.github.roundstar.results.NightResult;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How many exposures came out round, and what cost the others. A verdict already holds the interval
 * of the elongation against the limit, so the counts are taken as they are.
 *
 * @param judged exposures that the log covers
 * @param round round ones
 * @param borderline ones that may be either
 * @param trailedByCause trailed ones by cause
 * @param secondsByCause exposure time of the trailed ones by cause [s]
 * @param measured whether the images themselves were measured
 */
record ExposureTally(
    int judged,
    int round,
    int borderline,
    Map<String, Integer> trailedByCause,
    Map<String, Double> secondsByCause,
    boolean measured) {

  /**
   * Exposures lost to some causes.
   *
   * @param trailed how many
   * @param of of how many
   * @param hours their exposure time [h]
   */
  record Lost(int trailed, int of, double hours) {
    double share() {
      return (double) trailed / of;
    }
  }

  /** The night's exposures; empty when there are too few that the log covers. */
  static Optional<ExposureTally> of(NightResult night) {
    if (night.exposures() == null) {
      return Optional.empty();
    }
    List<Exposure> judged =
        night.exposures().stream().filter(e -> !"not covered".equals(e.verdict())).toList();
    if (judged.size() < Thresholds.FEWEST_EXPOSURES) {
      return Optional.empty();
    }
    Map<String, Integer> trailed = new TreeMap<>();
    Map<String, Double> seconds = new TreeMap<>();
    for (Exposure exposure : judged) {
      if ("trailed".equals(exposure.verdict())) {
        String cause = exposure.cause() == null ? "unknown" : exposure.cause();
        trailed.merge(cause, 1, Integer::sum);
        seconds.merge(cause, exposure.seconds(), Double::sum);
      }
    }
    return Optional.of(
        new ExposureTally(
            judged.size(),
            count(judged, "round"),
            count(judged, "borderline"),
            trailed,
            seconds,
            judged.stream().anyMatch(e -> e.measuredElongation() != null)));
  }

  private static int count(List<Exposure> exposures, String verdict) {
    return (int) exposures.stream().filter(e -> verdict.equals(e.verdict())).count();
  }

  /** What some causes cost. */
  Lost lostTo(String... causes) {
    int count = 0;
    double seconds = 0;
    for (String cause : causes) {
      count += trailedByCause.getOrDefault(cause, 0);
      seconds += secondsByCause.getOrDefault(cause, 0.0);
    }
    return new Lost(count, judged, seconds / 3600);
  }

  int trailed() {
    return trailedByCause.values().stream().mapToInt(Integer::intValue).sum();
  }
}
