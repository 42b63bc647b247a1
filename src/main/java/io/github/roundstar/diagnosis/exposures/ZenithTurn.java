package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How the long axis of star images turns as the zenith's direction does: 1 where it follows it, as
 * what the air does, and 0 where it stays on the sensor, as what optics and flexure do. Fitted over
 * the night's exposures by a constant and a slope.
 *
 * @param slope turn of the long axis over turn of the zenith's direction, 95 % interval by
 *     Student's t
 * @param exposures how many were fitted
 */
record ZenithTurn(Estimate slope, int exposures) {
  /** Fewer points leave a line and its scatter to chance. */
  private static final int FEWEST = 5;

  /**
   * One exposure.
   *
   * @param zenithDegrees position angle of the zenith [deg]
   * @param axisDegrees position angle of the long axis [deg]
   */
  record Point(double zenithDegrees, double axisDegrees) {}

  /** The turn over a night; nothing with few exposures, or where the zenith's direction stays. */
  static Optional<ZenithTurn> of(List<Point> points) {
    int n = points.size();
    if (n < FEWEST) {
      return Optional.empty();
    }
    double start = points.get(0).zenithDegrees();
    double[] zenith = points.stream().mapToDouble(p -> near(start, p.zenithDegrees())).toArray();
    double[] axis = new double[n];
    for (int i = 0; i < n; i++) {
      axis[i] = near(zenith[i], points.get(i).axisDegrees());
    }
    return LeastSquares.withConstant(n, zenith).map(design -> of(design.fit(axis), n));
  }

  private static ZenithTurn of(LinearFit fit, int n) {
    double t = new TDistribution(null, fit.degreesOfFreedom()).inverseCumulativeProbability(0.975);
    return new ZenithTurn(Estimate.symmetric(fit.coefficient(1), t * fit.standardError(1)), n);
  }

  /** The same axis as an angle within a quarter turn of another. */
  private static double near(double reference, double degrees) {
    return reference + Math.IEEEremainder(degrees - reference, 180);
  }

  /** Whether it surely turns, and by as much as the zenith's direction may. */
  boolean certain() {
    return slope.lo95() > 0 && slope.covers(1);
  }
}
