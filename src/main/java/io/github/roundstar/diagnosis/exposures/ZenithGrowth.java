package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How star images get longer towards the zenith as the star sinks. The air spreads colours by an
 * angle that goes as tan z, so the variance along the vertical, less that across and less what the
 * guide log gives, is fitted over the night's exposures by a constant and tan&sup2; z.
 *
 * @param arcsec2 variance that the spread has at 45 degrees, 95 % interval by Student's t [arcsec2]
 * @param exposures how many were fitted
 * @see "Filippenko (1982), PASP 94, 715 (from memory): differential refraction goes as tan z"
 */
record ZenithGrowth(Estimate arcsec2, int exposures) {
  /** Fewer points leave a line and its scatter to chance. */
  private static final int FEWEST = 5;

  /**
   * One exposure.
   *
   * @param tanSquared tan&sup2; z
   * @param excessArcsec2 variance along the vertical beyond that across and the log's [arcsec2]
   */
  record Point(double tanSquared, double excessArcsec2) {}

  /** The growth over a night; nothing with few exposures, or at one zenith distance. */
  static Optional<ZenithGrowth> of(List<Window> windows, Equipment equipment, double seeing) {
    List<Point> points = new ArrayList<>();
    windows.forEach(window -> point(window, equipment, seeing).ifPresent(points::add));
    return of(points);
  }

  static Optional<ZenithGrowth> of(List<Point> points) {
    int n = points.size();
    if (n < FEWEST) {
      return Optional.empty();
    }
    double[] tanSquared = points.stream().mapToDouble(Point::tanSquared).toArray();
    double[] excess = points.stream().mapToDouble(Point::excessArcsec2).toArray();
    return LeastSquares.withConstant(n, tanSquared).map(design -> of(design.fit(excess), n));
  }

  private static ZenithGrowth of(LinearFit fit, int n) {
    double t = new TDistribution(null, fit.degreesOfFreedom()).inverseCumulativeProbability(0.975);
    return new ZenithGrowth(Estimate.symmetric(fit.coefficient(1), t * fit.standardError(1)), n);
  }

  /** What one exposure tells; nothing where zenith, width or angle are not known. */
  static Optional<Point> point(Window window, Equipment equipment, double seeing) {
    Optional<ZenithDirection> zenith = window.zenith(equipment);
    Optional<MeasuredShape> measured =
        window.measured().filter(m -> m.fwhmArcsec().isPresent() && m.angleDegrees().isPresent());
    if (zenith.isEmpty() || measured.isEmpty()) {
      return Optional.empty();
    }
    double up = Math.toRadians(2 * zenith.get().positionAngleDegrees());
    double angle = Math.toRadians(2 * measured.get().angleDegrees().getAsDouble());
    double elongation = measured.get().elongation().value();
    double area = PredictedShape.variance(measured.get().fwhmArcsec().getAsDouble());
    CoreShape log = window.core(i -> true, new double[3], seeing);
    double ofLog = (log.nn() - log.ee()) * Math.cos(up) + 2 * log.en() * Math.sin(up);
    double tan = Math.tan(Math.toRadians(zenith.get().distanceDegrees()));
    return Optional.of(
        new Point(tan * tan, area * (elongation - 1 / elongation) * Math.cos(angle - up) - ofLog));
  }

  /** Whether it grows, for certain. */
  boolean certain() {
    return arcsec2.lo95() > 0;
  }

  /** Whether the growth is surely too small to give half of what an exposure shows. */
  boolean deniesHalfOf(Point point) {
    return arcsec2.hi95() * point.tanSquared() < point.excessArcsec2() / 2;
  }

  /** Spread of the colours at 45 degrees, as a standard deviation [arcsec]. */
  Estimate spreadArcsec() {
    return new Estimate(root(arcsec2.value()), root(arcsec2.lo95()), root(arcsec2.hi95()));
  }

  private static double root(double variance) {
    return Math.sqrt(Math.max(0, variance));
  }
}
