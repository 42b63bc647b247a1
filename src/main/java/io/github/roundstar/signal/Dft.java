package io.github.roundstar.signal;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Discrete Fourier transform of any length. Commons Math transforms powers of two only; other
 * lengths become a convolution of that kind.
 *
 * @see "Bluestein (1970), IEEE Trans. Audio Electroacoust. 18, 451"
 */
final class Dft {
  private Dft() {}

  /**
   * Sum over n of x[n] exp(-2&pi;ikn/N), for k = 0 .. N/2.
   *
   * @return real parts, then imaginary parts
   */
  static double[][] half(double[] values) {
    int n = values.length;
    int cells = Integer.highestOneBit(2 * n - 1) << 1;
    double[][] chirp = chirp(n);
    double[][] signal = new double[2][cells];
    double[][] kernel = new double[2][cells];
    for (int i = 0; i < n; i++) {
      signal[0][i] = values[i] * chirp[0][i];
      signal[1][i] = -values[i] * chirp[1][i];
      int mirrored = -i & (cells - 1);
      for (int part = 0; part < 2; part++) {
        kernel[part][i] = chirp[part][i];
        kernel[part][mirrored] = chirp[part][i];
      }
    }
    transform(signal, TransformType.FORWARD);
    transform(kernel, TransformType.FORWARD);
    multiply(signal, kernel);
    transform(signal, TransformType.INVERSE);
    double[][] half = new double[2][n / 2 + 1];
    for (int k = 0; k <= n / 2; k++) {
      half[0][k] = signal[0][k] * chirp[0][k] + signal[1][k] * chirp[1][k];
      half[1][k] = signal[1][k] * chirp[0][k] - signal[0][k] * chirp[1][k];
    }
    return half;
  }

  /** exp(i pi k^2 / n), k^2 taken modulo 2n so that no digits are lost. */
  private static double[][] chirp(int n) {
    double[][] chirp = new double[2][n];
    for (int k = 0; k < n; k++) {
      double angle = Math.PI * ((long) k * k % (2L * n)) / n;
      chirp[0][k] = Math.cos(angle);
      chirp[1][k] = Math.sin(angle);
    }
    return chirp;
  }

  private static void multiply(double[][] a, double[][] b) {
    for (int i = 0; i < a[0].length; i++) {
      double real = a[0][i] * b[0][i] - a[1][i] * b[1][i];
      a[1][i] = a[0][i] * b[1][i] + a[1][i] * b[0][i];
      a[0][i] = real;
    }
  }

  private static void transform(double[][] data, TransformType type) {
    FastFourierTransformer.transformInPlace(data, DftNormalization.STANDARD, type);
  }
}
