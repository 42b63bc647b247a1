package io.github.roundstar.results;

import java.util.List;

/**
 * Work on the mount, and what the nights after it say against those before.
 *
 * @param date the day it was done
 * @param what what was done
 * @param telescope mount and optics, where the season has several; empty else
 * @param days since the season's first night; negative before it
 * @param nightsBefore nights since the change before
 * @param nightsAfter nights until the next change
 * @param summary in a sentence
 * @param figures figure by figure; empty when a side has no night
 * @param ranks probability from a rank test, for figures that four nights on either side have
 */
public record SeasonChange(
    String date,
    String what,
    String telescope,
    double days,
    int nightsBefore,
    int nightsAfter,
    String summary,
    List<ComparedFigure> figures,
    List<Rank> ranks) {
  /** Copies the lists. */
  public SeasonChange {
    figures = List.copyOf(figures);
    ranks = List.copyOf(ranks);
  }

  /**
   * Mann and Whitney's test of one figure.
   *
   * @param key the figure
   * @param probability that chance makes the nights after so different in rank
   */
  public record Rank(String key, double probability) {}
}
