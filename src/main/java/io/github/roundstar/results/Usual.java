package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * A night beside the user's own earlier nights with the same mount and optics.
 *
 * @param nights how many earlier nights
 * @param from name of the first of them
 * @param to name of the last
 * @param figures figure by figure
 */
public record Usual(int nights, String from, String to, List<Figure> figures) {
  /** It is as it is on other nights, as far as this night can tell. */
  public static final String USUAL = "usual";

  /** Surely better than half of the nights around the median. */
  public static final String BETTER = "better";

  /** Surely worse than half of the nights around the median. */
  public static final String WORSE = "worse";

  /** Copies the list. */
  public Usual {
    figures = List.copyOf(figures);
  }

  /**
   * One figure.
   *
   * @param key short name, the same as in comparisons
   * @param name in words
   * @param unit unit of the values
   * @param value this night's, as distance from the target where there is one, with its interval
   *     within the night
   * @param median of the earlier nights
   * @param lowerQuartile a quarter of them lie below
   * @param upperQuartile a quarter of them lie above
   * @param nights how many of them have it
   * @param word usual, better or worse
   * @param beyond how many of them this night is surely better than, or surely worse than; 0 where
   *     it is usual
   * @param farOff whether it lies so far on the worse side that something must have changed
   * @param text the word in a few, with the count
   */
  public record Figure(
      String key,
      String name,
      String unit,
      Estimate value,
      double median,
      double lowerQuartile,
      double upperQuartile,
      int nights,
      String word,
      int beyond,
      boolean farOff,
      String text) {}
}
