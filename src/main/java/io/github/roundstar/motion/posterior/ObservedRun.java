package io.github.roundstar.motion.posterior;

import java.util.Arrays;

/**
 * The measured frames of one axis of a run; nobody writes to the arrays.
 *
 * @param seconds middle of each exposure, ascending [s]
 * @param startsPiece whether the level is lost before a frame; the first starts a piece in any case
 * @param arcsec where the star stood, known shifts of the set point added [arcsec]
 * @param columns what moves steadily; each run has as many, and what they are multiplied by is its
 *     own. Those in which a sinusoid moves come last
 * @param deviations prior standard deviation of what each column is multiplied by; in the moving
 *     ones for a walk of 1 arcsec over a turn
 * @param pushes what the pulses push
 * @param walkShare variance of the walk in this run over the common one: cos^2 (declination) for
 *     one at the right ascension axis that is seen on the sky, else 1
 */
public record ObservedRun(
    double[] seconds,
    boolean[] startsPiece,
    double[] arcsec,
    double[][] columns,
    double[] deviations,
    Pushes pushes,
    double walkShare) {
  /** The first of the columns alone. */
  ObservedRun first(int count) {
    return new ObservedRun(
        seconds,
        startsPiece,
        arcsec,
        Arrays.copyOf(columns, count),
        Arrays.copyOf(deviations, count),
        pushes,
        walkShare);
  }

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
        Arrays.stream(columns).map(c -> at(kept, c)).toArray(double[][]::new),
        deviations,
        (width, start, unlikeness) ->
            Arrays.stream(pushes.columns(width, start, unlikeness))
                .map(c -> at(kept, c))
                .toArray(double[][]::new),
        walkShare);
  }

  private static double[] at(int[] samples, double[] values) {
    double[] at = new double[samples.length];
    for (int i = 0; i < at.length; i++) {
      at[i] = values[samples[i]];
    }
    return at;
  }
}
