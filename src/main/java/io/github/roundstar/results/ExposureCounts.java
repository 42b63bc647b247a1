package io.github.roundstar.results;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How many exposures are round, and how many were lost to which cause.
 *
 * @param all exposures
 * @param round certainly round
 * @param borderline neither certainly round nor certainly trailed
 * @param notCovered not covered by the log
 * @param trailedByCause trailed ones by cause, {@code unknown} where none stands out
 */
public record ExposureCounts(
    int all, int round, int borderline, int notCovered, Map<String, Integer> trailedByCause) {
  /** Counts. */
  public static ExposureCounts of(List<Exposure> exposures) {
    Map<String, Integer> causes = new TreeMap<>();
    exposures.stream()
        .filter(e -> e.verdict().equals("trailed"))
        .forEach(e -> causes.merge(e.cause() == null ? "unknown" : e.cause(), 1, Integer::sum));
    return new ExposureCounts(
        exposures.size(),
        count(exposures, "round"),
        count(exposures, "borderline"),
        count(exposures, "not covered"),
        causes);
  }

  private static int count(List<Exposure> exposures, String verdict) {
    return (int) exposures.stream().filter(e -> e.verdict().equals(verdict)).count();
  }

  /** Trailed exposures. */
  public int trailed() {
    return trailedByCause.values().stream().mapToInt(n -> n).sum();
  }

  /**
   * {@code 12 of 20 exposures round, 5 trailed (5 periodic error), 2 borderline, 1 not covered};
   * what there is none of is left out.
   */
  public String words() {
    if (all == 0) {
      return "no exposures in the list";
    }
    String causes =
        trailedByCause.entrySet().stream()
            .sorted(
                Map.Entry.<String, Integer>comparingByValue()
                    .reversed()
                    .thenComparing(Map.Entry.comparingByKey()))
            .map(e -> e.getValue() + " " + e.getKey().replace('-', ' '))
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "%d of %d exposures round%s%s%s",
        round,
        all,
        some(trailed(), " trailed (" + causes + ")"),
        some(borderline, " borderline"),
        some(notCovered, " not covered"));
  }

  private static String some(int count, String what) {
    return count == 0 ? "" : ", " + count + what;
  }
}
