package io.github.roundstar.stars;

import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.Stretch;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.complex.Complex;

/**
 * Star shapes over the field as the complex polynomial c + g z + h conj(z) + q z&sup2;, with z = x
 * + iy from the field's centre in units of half its diagonal. What is fitted has the direction of
 * the stretch and the length (a&sup2; - b&sup2;) / 2b&sup2;, with a and b the long and the short
 * axis: equal to the stretch where that is small, and exactly a polynomial where a turn or a trail
 * adds to the variance of a round image.
 */
final class FieldFit {
  private final LinearFit fit;
  private final Covariance covariance;
  private final int width;
  private final int height;

  private FieldFit(LinearFit fit, int width, int height) {
    this.fit = fit;
    this.covariance = fit.covariance();
    this.width = width;
    this.height = height;
  }

  /** The fit; nothing where the stars do not fix all of it. */
  static Optional<FieldFit> of(List<Star> stars, int width, int height) {
    int n = stars.size();
    double scale = Math.hypot(width, height) / 2;
    double[][] columns = new double[8][2 * n];
    double[] values = new double[2 * n];
    for (int i = 0; i < n; i++) {
      Star star = stars.get(i);
      double x = (star.x() - (width + 1) / 2.0) / scale;
      double y = (star.y() - (height + 1) / 2.0) / scale;
      Complex[] terms = terms(new Complex(x, y));
      for (int t = 0; t < terms.length; t++) {
        put(columns, 2 * t, i, n, terms[t]);
      }
      Complex excess = excess(star.stretch());
      values[i] = excess.getReal();
      values[n + i] = excess.getImaginary();
    }
    return LeastSquares.on(columns).map(design -> new FieldFit(design.fit(values), width, height));
  }

  private static Complex excess(Stretch stretch) {
    double size = Math.hypot(stretch.along(), stretch.aslant());
    double longer = size == 0 ? 1 : Math.expm1(2 * size) / 2 / size;
    return new Complex(longer * stretch.along(), longer * stretch.aslant());
  }

  private static Complex[] terms(Complex z) {
    return new Complex[] {Complex.ONE, z, z.conjugate(), z.multiply(z)};
  }

  /** Columns of the real and imaginary part of a coefficient. */
  private static void put(double[][] columns, int at, int star, int n, Complex term) {
    columns[at][star] = term.getReal();
    columns[at][n + star] = term.getImaginary();
    columns[at + 1][star] = -term.getImaginary();
    columns[at + 1][n + star] = term.getReal();
  }

  /** Coefficient of a term: 0 for c, 1 for g, 2 for h, 3 for q. */
  Complex coefficient(int term) {
    return new Complex(fit.coefficient(2 * term), fit.coefficient(2 * term + 1));
  }

  /** Larger of the standard errors of its parts. */
  double sigma(int term) {
    return Math.max(fit.standardError(2 * term), fit.standardError(2 * term + 1));
  }

  /** The four corners, in the fit's units. */
  Complex[] corners() {
    double scale = Math.hypot(width, height);
    double x = width / scale;
    double y = height / scale;
    return new Complex[] {
      new Complex(x, y), new Complex(-x, y), new Complex(x, -y), new Complex(-x, -y)
    };
  }

  /** Stretch at a place. */
  Stretch at(Complex z) {
    return stretch(pattern(z).add(coefficient(0)));
  }

  private static Stretch stretch(Complex excess) {
    double size = excess.abs();
    double shorter = size == 0 ? 1 : Math.log1p(2 * size) / 2 / size;
    return new Stretch(shorter * excess.getReal(), shorter * excess.getImaginary());
  }

  /** What the terms beside the constant add at a place. */
  Complex pattern(Complex z) {
    Complex[] terms = terms(z);
    Complex sum = Complex.ZERO;
    for (int t = 1; t < terms.length; t++) {
      sum = sum.add(coefficient(t).multiply(terms[t]));
    }
    return sum;
  }

  /** Standard error of either part of the stretch at a place. */
  double sigmaAt(Complex z) {
    Complex[] terms = terms(z);
    double[] row = new double[2 * terms.length];
    for (int t = 0; t < terms.length; t++) {
      row[2 * t] = terms[t].getReal();
      row[2 * t + 1] = -terms[t].getImaginary();
    }
    double variance = 0;
    for (int i = 0; i < row.length; i++) {
      for (int j = 0; j < row.length; j++) {
        variance += row[i] * row[j] * covariance.at(i, j);
      }
    }
    double excess = pattern(z).add(coefficient(0)).abs();
    return Math.sqrt(Math.max(0, variance)) / (1 + 2 * excess);
  }

  /** A place of the fit in the image, the first pixel's centre at 1. */
  FieldPattern.Pivot pixel(Complex z) {
    double scale = Math.hypot(width, height) / 2;
    return new FieldPattern.Pivot(
        (width + 1) / 2.0 + z.getReal() * scale, (height + 1) / 2.0 + z.getImaginary() * scale);
  }
}
