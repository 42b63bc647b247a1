package io.github.roundstar.signal;

/**
 * How well a sudden shift at each sample would explain a wandering series with white noise: scores
 * of a lasting step, of a ramp and of a passing shift, each with the wander and the noise at every
 * other time taken into account. They come out of one backward pass over the white steps;
 * immutable.
 *
 * <p>The sum of the smoothing errors from a sample on is the score of a step there; any other
 * pattern is a sum of steps. Score over the root of its information is the t value of the pattern
 * as one more regressor; score over information is its size.
 *
 * @see "de Jong &amp; Penzer (1998), J. Am. Stat. Assoc. 93, 796; Harvey &amp; Koopman (1992), J.
 *     Bus. Econ. Stat. 10, 377"
 */
public final class ShiftScores {
  private final double[] score;
  private final double[] information;
  private final double[] keep;

  private ShiftScores(double[] score, double[] information, double[] keep) {
    this.score = score;
    this.information = information;
    this.keep = keep;
  }

  /**
   * Scores for a series.
   *
   * @param whitening the filter that made it white, for noise without memory
   * @param white the white steps, regressors taken out
   */
  public static ShiftScores of(Whitening whitening, double[] white) {
    if (whitening.remembers()) {
      throw new IllegalArgumentException(
          "noise with a memory: the scores are those of white noise");
    }
    int n = whitening.samples();
    double[] score = new double[n];
    double[] information = new double[n];
    double[] keep = new double[n];
    int step = white.length - 1;
    for (int i = n - 1; i >= 0; i--) {
      if (whitening.startsPiece(i)) {
        continue;
      }
      double scale = whitening.scale(i);
      keep[i] = 1 - whitening.gain(i);
      boolean last = i == n - 1;
      score[i] = white[step--] * scale + (last ? 0 : keep[i] * score[i + 1]);
      information[i] = scale * scale + (last ? 0 : keep[i] * keep[i] * information[i + 1]);
    }
    return new ShiftScores(score, information, keep);
  }

  /** Number of samples. */
  public int size() {
    return score.length;
  }

  /**
   * A shift that came between samples {@code i - 1} and {@code i + length - 1}, in equal parts, and
   * stays.
   *
   * @param length 1 for a sudden step
   */
  public Shift lasting(int i, int length) {
    int end = Math.min(size(), i + length);
    double sum = 0;
    double total = 0;
    double later = 0;
    for (int k = end - 1; k >= i; k--) {
      sum += score[k];
      later = k + 1 < end ? keep[k] * (information[k + 1] + later) : 0;
      total += information[k] + 2 * later;
    }
    return new Shift(sum / length, total / length / length);
  }

  /** A shift at samples {@code i} to {@code i + length - 1} that is gone afterwards. */
  public Shift passing(int i, int length) {
    int end = i + length;
    if (end >= size()) {
      return new Shift(score[i], information[i]);
    }
    double kept = 1;
    for (int k = i; k < end; k++) {
      kept *= keep[k];
    }
    return new Shift(
        score[i] - score[end], information[i] + information[end] - 2 * kept * information[end]);
  }

  /**
   * A pattern's score.
   *
   * @param score in the data's unit
   * @param information its variance over that of the noise; 0 where the pattern cannot be told
   */
  public record Shift(double score, double information) {
    /** Score with the variance of the noise; 0 where the pattern cannot be told. */
    public double normed() {
      return information > 1e-9 ? score / Math.sqrt(information) : 0;
    }

    /** Size of the shift, in the data's unit; 0 where it cannot be told. */
    public double size() {
      return information > 1e-9 ? score / information : 0;
    }
  }
}
