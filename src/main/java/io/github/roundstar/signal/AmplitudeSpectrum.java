package io.github.roundstar.signal;

import java.util.Locale;

/**
 * One-sided Fourier spectrum of evenly spaced samples, of any number.
 *
 * <p>A sinusoid on a bin comes out with its own amplitude, whatever the window; between bins it
 * comes out lower, at worst 0.64 of it (rectangular) or 0.85 (Hann). The mean stays in: take it and
 * any trend out first, or bin 0 leaks into its neighbours.
 *
 * @see "Heinzel, R&uuml;diger &amp; Schilling (2002), Spectrum and spectral density estimation by
 *     the DFT"
 */
public final class AmplitudeSpectrum {
  private static final double EVEN = 1e-6;

  private final double stepHz;
  private final double[] amplitude;
  private final double[] density;

  private AmplitudeSpectrum(double stepHz, double[] amplitude, double[] density) {
    this.stepHz = stepHz;
    this.amplitude = amplitude;
    this.density = density;
  }

  /**
   * The spectrum.
   *
   * @param series at least 2 samples, evenly spaced to a millionth of their step
   * @param window weights of the samples
   * @throws IllegalArgumentException if the samples are not evenly spaced
   */
  public static AmplitudeSpectrum of(Series series, Window window) {
    int n = series.size();
    double stepSeconds = evenStep(series);
    double[] weighted = new double[n];
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double weight = window.weight(i, n);
      weighted[i] = weight * series.value(i);
      sum += weight;
      squares += weight * weight;
    }
    double[][] transform = Dft.half(weighted);
    double[] amplitude = new double[n / 2 + 1];
    double[] density = new double[n / 2 + 1];
    for (int k = 0; k < amplitude.length; k++) {
      // Negative frequencies fold onto positive ones, but bin 0 and half the sampling rate.
      double sides = k == 0 || 2 * k == n ? 1 : 2;
      double size = Math.hypot(transform[0][k], transform[1][k]);
      amplitude[k] = sides * size / sum;
      density[k] = sides * size * size * stepSeconds / squares;
    }
    return new AmplitudeSpectrum(1 / (n * stepSeconds), amplitude, density);
  }

  private static double evenStep(Series series) {
    int n = series.size();
    Check.atLeast("number of samples", n, 2);
    double step = series.spanSeconds() / (n - 1);
    for (int i = 1; i < n; i++) {
      double here = series.seconds(i) - series.seconds(i - 1);
      if (Math.abs(here - step) > EVEN * step) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "step to time [%d] is %s s, expected an even %s s", i, here, step));
      }
    }
    return step;
  }

  /** Number of bins, from frequency 0 to half of the sampling frequency. */
  public int size() {
    return amplitude.length;
  }

  /** Frequency of bin {@code k} [Hz]. */
  public double frequencyHz(int k) {
    return k * stepHz;
  }

  /** Distance between bins [Hz]. */
  public double stepHz() {
    return stepHz;
  }

  /** Half of peak to peak of a sinusoid in bin {@code k}, unit of the values. */
  public double amplitude(int k) {
    return amplitude[k];
  }

  /** One-sided power spectral density in bin {@code k}, unit&sup2; per Hz. */
  public double density(int k) {
    return density[k];
  }
}
