package io.github.roundstar.signal;

/** Series that several tests share, made from their formulas; no value of ours. */
final class KnownSeries {
  private KnownSeries() {}

  /**
   * Noise of mean 0 and variance 1: the recurrence of the test suite in NIST SP 1065 (Riley 2008),
   * shifted and scaled.
   */
  static double[] unitNoise(int n) {
    double[] noise = new double[n];
    long state = 1234567890L;
    for (int i = 0; i < n; i++) {
      noise[i] = (state / 2147483647.0 - 0.5) * Math.sqrt(12);
      state = 16807 * state % 2147483647L;
    }
    return noise;
  }

  /** Autoregression of first order, coefficient 0.6, n = 200. */
  static double[] autoregression() {
    double[] series = unitNoise(200);
    for (int i = 1; i < series.length; i++) {
      series[i] += 0.6 * series[i - 1];
    }
    return series;
  }

  /** 256 samples every 3 s: sinusoids of 192 s and 48 s, exactly bins 4 and 16, and noise. */
  static Series evenlySampled() {
    double[] noise = unitNoise(256);
    double[] seconds = new double[256];
    double[] values = new double[256];
    for (int n = 0; n < 256; n++) {
      double t = 3.0 * n;
      seconds[n] = t;
      values[n] =
          0.30
              + 2.0 * Math.sin(2 * Math.PI * t / 192 + 0.5)
              + 0.75 * Math.cos(2 * Math.PI * t / 48 - 0.2)
              + 0.4 * noise[n];
    }
    return Series.of(seconds, values);
  }

  /** 120 samples at uneven steps with a gap of 45 s: sinusoids of 97 s and 41.3 s, and noise. */
  static Series unevenlySampled() {
    double[] noise = unitNoise(120);
    double[] seconds = new double[120];
    double[] values = new double[120];
    for (int n = 0; n < 120; n++) {
      double t = 3.0 * n + 0.9 * Math.sin(1.7 * n) + (n >= 70 ? 45 : 0);
      seconds[n] = t;
      values[n] =
          1.2
              + 2.5 * Math.sin(2 * Math.PI * t / 97 + 0.4)
              + 0.6 * Math.cos(2 * Math.PI * t / 41.3)
              + 0.5 * noise[n];
    }
    return Series.of(seconds, values);
  }

  /** Weights that go with {@link #unevenlySampled}. */
  static double[] unevenWeights() {
    double[] weights = new double[120];
    for (int n = 0; n < 120; n++) {
      double error = 0.5 + 0.2 * Math.cos(0.9 * n);
      weights[n] = 1 / (error * error);
    }
    return weights;
  }
}
