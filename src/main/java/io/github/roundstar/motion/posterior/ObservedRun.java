package io.github.roundstar.motion.posterior;

import java.util.Arrays;

/**
 * The measured frames of one axis of a run; nobody writes to the arrays.
 *
 * @param seconds middle of each exposure, ascending [s]
 * @param startsPiece whether the level is lost before a frame; the first starts a piece in any case
 * @param arcsec where the star stood, known shifts of the set point added [arcsec]
 * @param columns what moves steadily, in the order of the model; null for one that is not in this
 *     run
 * @param pushes what the pulses push
 */
public record ObservedRun(
    double[] seconds, boolean[] startsPiece, double[] arcsec, double[][] columns, Pushes pushes) {
  /** Number of frames. */
  int size() {
    return seconds.length;
  }

  /**
   * Blocks of frames spread over the run, each with a level of its own.
   *
   * @param blocks how many
   * @param length frames of each
   */
  ObservedRun blocks(int blocks, int length) {
    int[] kept = new int[blocks * length];
    boolean[] starts = new boolean[kept.length];
    for (int b = 0; b < blocks; b++) {
      int first = (int) ((long) (size() - length) * b / Math.max(1, blocks - 1));
      for (int i = 0; i < length; i++) {
        kept[b * length + i] = first + i;
        starts[b * length + i] = i == 0 || startsPiece[first + i];
      }
    }
    return new ObservedRun(
        at(kept, seconds),
        starts,
        at(kept, arcsec),
        Arrays.stream(columns).map(c -> c == null ? null : at(kept, c)).toArray(double[][]::new),
        (width, start, unlikeness) ->
            Arrays.stream(pushes.columns(width, start, unlikeness))
                .map(c -> at(kept, c))
                .toArray(double[][]::new));
  }

  private static double[] at(int[] samples, double[] values) {
    double[] at = new double[samples.length];
    for (int i = 0; i < at.length; i++) {
      at[i] = values[samples[i]];
    }
    return at;
  }
}
