package io.github.roundstar.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Unbroken stretches of a run, so that a chart draws no line through a time without the star. */
final class Stretches {
  /** A longer time without a measured frame is shown as a gap [s]. */
  private static final double GAP_SECONDS = 30;

  /** With long guide exposures the frames themselves lie apart. */
  private static final double GAP_CADENCES = 3;

  /**
   * Part of a series.
   *
   * @param from index of the first point
   * @param to one past the last
   * @param columns pixel columns it gets of those of the whole series, at least 1
   */
  record Stretch(int from, int to, int columns) {}

  private Stretches() {}

  /**
   * Cuts where the next point is more than 30 s and three cadences away.
   *
   * @param seconds times, ascending
   * @param cadenceSeconds usual time between frames
   * @param columns pixel columns for the whole series
   */
  static List<Stretch> of(double[] seconds, double cadenceSeconds, int columns) {
    double gap = Math.max(GAP_SECONDS, GAP_CADENCES * cadenceSeconds);
    List<Stretch> stretches = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= seconds.length; i++) {
      if (i == seconds.length || seconds[i] - seconds[i - 1] > gap) {
        double share = span(seconds, from, i) / span(seconds, 0, seconds.length);
        stretches.add(new Stretch(from, i, share > 0 ? (int) Math.ceil(columns * share) : 1));
        from = i;
      }
    }
    return stretches;
  }

  /** The parts one after the other, NaN between them. */
  static double[] joined(List<double[]> parts) {
    double[] all = new double[parts.stream().mapToInt(part -> part.length + 1).sum()];
    Arrays.fill(all, Double.NaN);
    int at = 0;
    for (double[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length + 1;
    }
    return parts.isEmpty() ? all : Arrays.copyOf(all, all.length - 1);
  }

  private static double span(double[] seconds, int from, int to) {
    return seconds[to - 1] - seconds[from];
  }
}
