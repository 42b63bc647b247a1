package io.github.roundstar.signal;

import io.github.roundstar.model.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Scatter of a point in the plane as an ellipse, and whether chance alone would have made it as
 * long.
 *
 * <p>With S the covariance, the ellipticity has the parts e1 = (Snn - See) / (Snn + See) and e2 = 2
 * Sen / (Snn + See); its length is (E&sup2; - 1) / (E&sup2; + 1) for an elongation E. How each
 * sample moves the two gives their covariance, with the autocorrelation of those contributions
 * respected. The interval is symmetric in the logarithm of E, by propagation of error. Where the
 * joint 95 % region of (e1, e2) holds zero, or the interval reaches it, the ellipse may be a
 * circle: the lower end is 1 and there is no position angle.
 *
 * <p>Simulated, the interval covers the truth in 94 to 96 % from some hundred independent samples
 * up. A circle should get an angle in 5 %: it does in 7 % with 300 independent samples, in 17 %
 * with 300 whose lag-1 autocorrelation is 0.9.
 *
 * @param shape covariance (divisor n) and its axes
 * @param elongation with its 95 % interval; absent when the short axis is zero
 * @param positionAngleDegrees of the long axis, north through east, [0, 180); absent when the lower
 *     end of the elongation is 1
 * @see "Hampel (1974), J. Am. Stat. Assoc. 69, 383, for influence"
 */
public record ErrorEllipse(
    CovarianceEllipse shape, Optional<Estimate> elongation, OptionalDouble positionAngleDegrees) {
  /** 95 % point of chi-square with 2 degrees of freedom. */
  private static final double CHI_SQUARE_95 = -2 * Math.log(0.05);

  /**
   * The ellipse of samples in order of time.
   *
   * @param east first coordinates, at least one
   * @param north as many second coordinates
   */
  public static ErrorEllipse of(double[] east, double[] north) {
    Check.sameLength("north", north, east.length);
    Check.finite("east", east);
    Check.finite("north", north);
    double[] x = Autocorrelation.centred(east);
    double[] y = Autocorrelation.centred(north);
    double n = x.length;
    CovarianceEllipse shape =
        new CovarianceEllipse(
            LeastSquares.dot(x, x) / n, LeastSquares.dot(y, y) / n, LeastSquares.dot(x, y) / n);
    if (shape.elongation().isEmpty()) {
      return new ErrorEllipse(shape, Optional.empty(), shape.positionAngleDegrees());
    }
    Estimate elongation = interval(shape, contributions(shape, x, y));
    return new ErrorEllipse(
        shape,
        Optional.of(elongation),
        elongation.lo95() > 1 ? shape.positionAngleDegrees() : OptionalDouble.empty());
  }

  /** What each sample adds, to first order, to e1, to e2 and to the logarithm of the elongation. */
  private static double[][] contributions(CovarianceEllipse shape, double[] x, double[] y) {
    double total = shape.varianceEast() + shape.varianceNorth();
    double e1 = e1(shape);
    double e2 = e2(shape);
    double angle = Math.toRadians(shape.positionAngleDegrees().orElse(0));
    double sine = Math.sin(angle);
    double cosine = Math.cos(angle);
    double[][] contributions = new double[3][x.length];
    for (int i = 0; i < x.length; i++) {
      double square = x[i] * x[i] + y[i] * y[i];
      contributions[0][i] = (y[i] * y[i] - x[i] * x[i] - e1 * square) / (total * x.length);
      contributions[1][i] = (2 * x[i] * y[i] - e2 * square) / (total * x.length);
      double along = (x[i] * sine + y[i] * cosine) / shape.majorSigma();
      double across = (x[i] * cosine - y[i] * sine) / shape.minorSigma();
      contributions[2][i] = (along * along - across * across) / (2 * x.length);
    }
    return contributions;
  }

  private static Estimate interval(CovarianceEllipse shape, double[][] contributions) {
    double[][] s = NeweyWest.prewhitenedSum(contributions);
    double e1 = e1(shape);
    double e2 = e2(shape);
    double determinant = s[0][0] * s[1][1] - s[0][1] * s[0][1];
    boolean maybeRound =
        e1 * e1 * s[1][1] - 2 * e1 * e2 * s[0][1] + e2 * e2 * s[0][0]
            <= CHI_SQUARE_95 * determinant;
    double value = shape.elongation().orElseThrow();
    double factor = Math.exp(Estimate.SIGMAS_95 * Math.sqrt(s[2][2]));
    return new Estimate(value, maybeRound ? 1 : Math.max(1, value / factor), value * factor);
  }

  private static double e1(CovarianceEllipse shape) {
    return (shape.varianceNorth() - shape.varianceEast())
        / (shape.varianceNorth() + shape.varianceEast());
  }

  private static double e2(CovarianceEllipse shape) {
    return 2 * shape.covariance() / (shape.varianceNorth() + shape.varianceEast());
  }
}
