package io.github.roundstar.signal;

/**
 * The least-squares sinusoid of one frequency: offset + cosine cos(2&pi;ft) + sine sin(2&pi;ft), t
 * in the time of the series.
 *
 * @param frequencyHz frequency f [Hz]
 * @param power share of the sum of squares about the mean that it explains, 0 to 1
 * @param cosine coefficient of the cosine, unit of the values
 * @param sine coefficient of the sine
 * @param offset the constant fitted beside them
 */
public record Sinusoid(
    double frequencyHz, double power, double cosine, double sine, double offset) {
  /** Half of peak to peak, unit of the values. */
  public double amplitude() {
    return Math.hypot(cosine, sine);
  }

  /** One over the frequency [s]. */
  public double periodSeconds() {
    return 1 / frequencyHz;
  }
}
