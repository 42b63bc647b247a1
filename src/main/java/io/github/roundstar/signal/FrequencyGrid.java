package io.github.roundstar.signal;

/**
 * Evenly spaced frequencies.
 *
 * @param startHz first frequency, not negative [Hz]
 * @param stepHz distance between two, positive [Hz]
 * @param count number of frequencies, at least 1
 */
public record FrequencyGrid(double startHz, double stepHz, int count) {
  /** Checks the three. */
  public FrequencyGrid {
    if (!(startHz >= 0 && Double.isFinite(startHz))) {
      throw new IllegalArgumentException("start " + startHz + " Hz is not a frequency");
    }
    Check.positive("step", stepHz);
    Check.atLeast("number of frequencies", count, 1);
  }

  /**
   * The grid of {@code count} frequencies, at least 2, from one end to the other, both included.
   */
  public static FrequencyGrid between(double firstHz, double lastHz, int count) {
    Check.atLeast("number of frequencies", count, 2);
    return new FrequencyGrid(firstHz, (lastHz - firstHz) / (count - 1), count);
  }

  /** Frequency {@code j} [Hz]. */
  public double hertz(int j) {
    return startHz + j * stepHz;
  }
}
