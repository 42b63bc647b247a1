package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * One figure along a season.
 *
 * @param key short name, the same as in comparisons
 * @param name in words
 * @param group mount, guiding or air
 * @param unit unit of its values
 * @param better what would be better
 * @param telescope mount and optics, where the season has several; empty else
 * @param perMonth slope in thirty days, steps at changes taken out, with an interval that holds for
 *     all figures of the season together; null when it cannot be had
 * @param because why it cannot be had; null when it can
 * @param usual median of the nights, and between what half of them lie; null with few
 * @param points the nights that have the figure, in order of time
 */
public record Trend(
    String key,
    String name,
    String group,
    String unit,
    String better,
    String telescope,
    Estimate perMonth,
    String because,
    Estimate usual,
    List<Point> points) {
  /** Copies the list. */
  public Trend {
    points = List.copyOf(points);
  }

  /**
   * A night's value.
   *
   * @param night name of the night
   * @param days since the season's first night
   * @param value as distance from the target where there is one, with the interval within the night
   */
  public record Point(String night, double days, Estimate value) {}
}
