package io.github.roundstar.results;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Hours of exposure by what to do with them.
 *
 * @param keep round ones [h]
 * @param borderline ones that are neither certainly round nor certainly trailed [h]
 * @param discard trailed ones [h]
 * @param notCovered ones that the log does not cover [h]
 * @param discardByCause trailed ones by cause, {@code unknown} where none stands out [h]
 */
public record ExposureHours(
    double keep,
    double borderline,
    double discard,
    double notCovered,
    Map<String, Double> discardByCause) {

  /** Adds up. */
  public static ExposureHours of(List<Exposure> exposures) {
    Map<String, Double> causes = new TreeMap<>();
    exposures.stream()
        .filter(e -> Keep.of(e) == Keep.DISCARD)
        .forEach(
            e ->
                causes.merge(
                    e.cause() == null ? "unknown" : e.cause(), e.seconds() / 3600, Double::sum));
    return new ExposureHours(
        hours(exposures, Keep.KEEP),
        hours(exposures, Keep.BORDERLINE),
        hours(exposures, Keep.DISCARD),
        hours(exposures, Keep.NOT_COVERED),
        causes);
  }

  private static double hours(List<Exposure> exposures, Keep keep) {
    return exposures.stream()
        .filter(e -> Keep.of(e) == keep)
        .mapToDouble(e -> e.seconds() / 3600)
        .sum();
  }

  /** What to do with an exposure: its verdict in other words, and nothing else. */
  public enum Keep {
    /** It is round. */
    KEEP("keep"),
    /** It is borderline: the eye decides. */
    BORDERLINE("borderline"),
    /** It is trailed. */
    DISCARD("discard"),
    /** The log says nothing of it. */
    NOT_COVERED("not covered");

    private final String word;

    Keep(String word) {
      this.word = word;
    }

    /** As lists and tables say it. */
    public String word() {
      return word;
    }

    /** By the verdict. */
    public static Keep of(Exposure exposure) {
      return switch (exposure.verdict()) {
        case "round" -> KEEP;
        case "trailed" -> DISCARD;
        case "borderline" -> BORDERLINE;
        default -> NOT_COVERED;
      };
    }
  }
}
