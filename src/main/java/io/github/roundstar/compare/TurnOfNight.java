package io.github.roundstar.compare;

import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.Polyline;
import java.util.List;
import java.util.Optional;

/**
 * One turn of a gear as the sum of its fitted harmonics, begun where the first harmonic crosses
 * zero upwards, so that nights that met the gear at different places lie over one another.
 */
final class TurnOfNight {
  private static final int POINTS = 120;
  private static final int MOST_HARMONICS = 8;
  private static final double SAME_PERIOD = 0.01;

  private TurnOfNight() {}

  /** The curve [share of a turn; arcsec at the axis]; empty where the night does not show it. */
  static Optional<Polyline> of(NightResult night, Component gear) {
    if (night.night().periodic() == null) {
      return Optional.empty();
    }
    List<Component> parts = night.night().periodic().components();
    Optional<Component> first = harmonic(parts, gear, 1);
    if (first.isEmpty() || first.get().phaseRad() == null) {
      return Optional.empty();
    }
    double[] x = new double[POINTS + 1];
    double[] y = new double[POINTS + 1];
    for (int i = 0; i <= POINTS; i++) {
      x[i] = (double) i / POINTS;
    }
    for (int order = 1; order <= MOST_HARMONICS; order++) {
      Optional<Component> part = harmonic(parts, gear, order);
      if (part.isPresent() && part.get().phaseRad() != null) {
        double start = part.get().phaseRad() - order * first.get().phaseRad();
        double amplitude = part.get().amplitudeArcsecAxis().value();
        for (int i = 0; i <= POINTS; i++) {
          y[i] += amplitude * Math.sin(2 * Math.PI * order * x[i] + start);
        }
      }
    }
    return Optional.of(Polyline.of(x, y));
  }

  private static Optional<Component> harmonic(List<Component> parts, Component gear, int order) {
    double wanted = gear.periodSeconds().value() / order;
    return parts.stream()
        .filter(part -> Math.abs(part.periodSeconds().value() / wanted - 1) < SAME_PERIOD)
        .findFirst();
  }
}
