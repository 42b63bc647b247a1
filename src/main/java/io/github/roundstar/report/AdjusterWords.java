package io.github.roundstar.report;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.PolarAxis;
import java.util.ArrayList;
import java.util.List;

/** What to do with a mount's two adjusters. */
final class AdjusterWords {
  /** A turn of the adjuster's screw so small is lost in its play [arcmin]. */
  private static final double LEAST_ARCMIN = 0.5;

  private AdjusterWords() {}

  /** Steps in the order a careful owner takes them; empty when there is nothing to turn. */
  static List<String> steps(PolarAxis axis) {
    List<String> steps = new ArrayList<>();
    if (axis.azimuthArcmin() == null || axis.altitudeArcmin() == null) {
      return steps;
    }
    step(steps, axis.azimuthArcmin(), "Turn the azimuth adjuster", "west", "east");
    step(steps, axis.altitudeArcmin(), "Move the altitude adjuster", "down", "up");
    if (!steps.isEmpty()) {
      steps.add(
          "Record two short runs again, some hours of hour angle apart. Expect a Dec drift of no"
              + " more than "
              + Numbers.plain(axis.driftAfterArcsecPerMinute())
              + " arcsec a minute beside that of refraction.");
    }
    return steps;
  }

  private static void step(
      List<String> steps, Estimate error, String verb, String whenPlus, String whenMinus) {
    if (error.covers(0) || Math.abs(error.value()) < LEAST_ARCMIN) {
      return;
    }
    Estimate size = error.times(Math.signum(error.value()));
    steps.add(
        verb
            + " so that the raised end of the axis goes "
            + Numbers.both(size)
            + " arcmin "
            + (error.value() > 0 ? whenPlus : whenMinus)
            + ".");
  }
}
