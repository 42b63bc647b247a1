package io.github.roundstar.motion;

import java.util.List;

/**
 * One turn of a family: the sum of its harmonics against the angle of the fundamental; immutable.
 */
public final class TurnCurve {
  /** Angles tried for the extremes: a tenth harmonic still gets a hundred of them. */
  private static final int ANGLES = 1024;

  private final double angularRate;
  private final int[] orders;
  private final double[] cosines;
  private final double[] sines;

  private TurnCurve(double angularRate, int[] orders, double[] cosines, double[] sines) {
    this.angularRate = angularRate;
    this.orders = orders;
    this.cosines = cosines;
    this.sines = sines;
  }

  static TurnCurve of(SharedFit fit, int family) {
    List<Integer> harmonics = fit.layout().families().get(family).harmonics();
    int count = harmonics.size();
    double[] cosines = new double[count];
    double[] sines = new double[count];
    for (int h = 0; h < count; h++) {
      cosines[h] = fit.parameter(fit.layout().amplitude(family, h));
      sines[h] = fit.parameter(fit.layout().amplitude(family, h) + 1);
    }
    return new TurnCurve(
        fit.parameter(fit.layout().rate(family)),
        harmonics.stream().mapToInt(Integer::intValue).toArray(),
        cosines,
        sines);
  }

  /** One turn [s]. */
  public double periodSeconds() {
    return 2 * Math.PI / angularRate;
  }

  /** The curve at an angle of the fundamental [rad; arcsec at the axis]. */
  public double at(double angle) {
    double sum = 0;
    for (int h = 0; h < orders.length; h++) {
      sum += cosines[h] * Math.cos(orders[h] * angle) + sines[h] * Math.sin(orders[h] * angle);
    }
    return sum;
  }

  /** Steepest slope of the curve against time, either way [arcsec/s at the axis]. */
  public double steepestArcsecPerSecond() {
    double steepest = 0;
    for (int i = 0; i < ANGLES; i++) {
      steepest = Math.max(steepest, Math.abs(slope(2 * Math.PI * i / ANGLES)));
    }
    return steepest * angularRate;
  }

  /** Angle at which the curve times {@code sign} is greatest [rad]. */
  double extremePhase(int sign) {
    double best = 0;
    for (int i = 1; i < ANGLES; i++) {
      double angle = 2 * Math.PI * i / ANGLES;
      if (sign * at(angle) > sign * at(best)) {
        best = angle;
      }
    }
    return best + summit(best);
  }

  /** How far from {@code angle} the parabola through its neighbours has its summit [rad]. */
  private double summit(double angle) {
    double step = 2 * Math.PI / ANGLES;
    double before = at(angle - step);
    double after = at(angle + step);
    double curvature = before - 2 * at(angle) + after;
    return curvature == 0 ? 0 : step * (before - after) / (2 * curvature);
  }

  private double slope(double angle) {
    double sum = 0;
    for (int h = 0; h < orders.length; h++) {
      sum +=
          orders[h]
              * (sines[h] * Math.cos(orders[h] * angle) - cosines[h] * Math.sin(orders[h] * angle));
    }
    return sum;
  }
}
