package io.github.roundstar.stars;

import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import java.util.List;
import java.util.Optional;

/**
 * How star shapes change over the field. With z = x + iy from the field's centre in units of half
 * its diagonal and the stretch as a complex number, the stars are fitted by c + g z + h conj(z) + q
 * z&sup2;. A turn of the field about a point p stretches stars along circles about it: -k (z -
 * p)&sup2;, so q is negative. Optics that spread stars outwards give a positive q; a tilted sensor
 * gives g and h.
 *
 * @param kind what dominates
 * @param cornerStretch stretch that the pattern alone reaches in a corner; 0 for a uniform field
 * @param cornerStretchSigma its standard error
 * @param pivot the point about which the field turns [px]; nothing unless it turns
 */
public record FieldPattern(
    Kind kind, double cornerStretch, double cornerStretchSigma, Optional<Pivot> pivot) {
  /** Fewer stars cannot tell a pattern. */
  private static final int FEWEST_STARS = 20;

  /** Standard errors that a pattern must reach: one false in some thousands. */
  private static final double SIGNIFICANT = 4;

  /** Smaller patterns harm nobody: a tenth of the usual limit of 1.15 and less. */
  private static final double LEAST_STRETCH = 0.02;

  /** What the pattern looks like. */
  public enum Kind {
    /** Too few stars. */
    UNKNOWN,
    /** Round everywhere. */
    NONE,
    /** The same everywhere: tracking or wind. */
    UNIFORM,
    /** Along circles about a point: the field turned. */
    ROTATION,
    /** Outwards from the centre: optics. */
    RADIAL,
    /** Grows towards one side: tilt, or optics off their axis. */
    ONE_SIDED
  }

  /**
   * A point in the image, the first pixel's centre at 1.
   *
   * @param x along a row [px]
   * @param y along a column [px]
   */
  public record Pivot(double x, double y) {}

  private static final FieldPattern UNKNOWN = of(Kind.UNKNOWN, 0, 0);

  private static FieldPattern of(Kind kind, double stretch, double sigma) {
    return new FieldPattern(kind, stretch, sigma, Optional.empty());
  }

  static FieldPattern of(List<Star> stars, int width, int height) {
    int n = stars.size();
    if (n < FEWEST_STARS) {
      return UNKNOWN;
    }
    double scale = Math.hypot(width, height) / 2;
    double[][] columns = new double[8][2 * n];
    double[] values = new double[2 * n];
    for (int i = 0; i < n; i++) {
      Star star = stars.get(i);
      double x = (star.x() - (width + 1) / 2.0) / scale;
      double y = (star.y() - (height + 1) / 2.0) / scale;
      put(columns, 0, i, n, 1, 0);
      put(columns, 2, i, n, x, y);
      put(columns, 4, i, n, x, -y);
      put(columns, 6, i, n, x * x - y * y, 2 * x * y);
      values[i] = star.stretch().along();
      values[n + i] = star.stretch().aslant();
    }
    return LeastSquares.on(columns)
        .map(design -> of(design.fit(values), stars, width, height, scale))
        .orElse(UNKNOWN);
  }

  /** Columns of the real and imaginary part of a coefficient of the complex term (x, y). */
  private static void put(double[][] columns, int at, int star, int n, double x, double y) {
    columns[at][star] = x;
    columns[at][n + star] = y;
    columns[at + 1][star] = -y;
    columns[at + 1][n + star] = x;
  }

  private static FieldPattern of(
      LinearFit fit, List<Star> stars, int width, int height, double scale) {
    double square = fit.coefficient(6);
    double squareSigma = fit.standardError(6);
    if (clear(Math.abs(square), squareSigma)) {
      if (square > 0) {
        return of(Kind.RADIAL, square, squareSigma);
      }
      double pivotX = fit.coefficient(2) / (-2 * square);
      double pivotY = fit.coefficient(3) / (-2 * square);
      return new FieldPattern(
          Kind.ROTATION,
          -square,
          squareSigma,
          Optional.of(
              new Pivot((width + 1) / 2.0 + pivotX * scale, (height + 1) / 2.0 + pivotY * scale)));
    }
    double slope = 0;
    double slopeSigma = 0;
    for (int j = 2; j < 6; j += 2) {
      double size = Math.hypot(fit.coefficient(j), fit.coefficient(j + 1));
      if (size > slope) {
        slope = size;
        slopeSigma = Math.max(fit.standardError(j), fit.standardError(j + 1));
      }
    }
    if (clear(slope, slopeSigma)) {
      return of(Kind.ONE_SIDED, slope, slopeSigma);
    }
    MeanStretch mean = MeanStretch.of(stars);
    boolean round = mean.stretch().elongation(mean.sigma()).lo95() <= 1;
    return of(round ? Kind.NONE : Kind.UNIFORM, 0, squareSigma);
  }

  private static boolean clear(double size, double sigma) {
    return size > SIGNIFICANT * sigma && size > LEAST_STRETCH;
  }
}
