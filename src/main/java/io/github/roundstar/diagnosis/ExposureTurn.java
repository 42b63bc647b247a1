package io.github.roundstar.diagnosis;

import io.github.roundstar.diagnosis.exposures.FieldTurn;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisPlaces;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.sky.FieldRotation;
import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.SiderealRate;
import io.github.roundstar.sky.StarPlace;
import java.util.HashMap;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;

/** How the polar axis turns the field during the exposures of each run. */
final class ExposureTurn {
  /** Axes that are drawn. */
  private static final int DRAWS = 32;

  /** Nearer to the pole a turn says nothing of an axis. */
  private static final double HIGHEST_DECLINATION = 85;

  private ExposureTurn() {}

  /**
   * The turn by an axis that was found, whatever it is worth; a run without a place of its star
   * does not turn.
   *
   * @param known whether the axis is known well enough to tell it
   */
  static FieldTurn of(AxisSearch.Found found, boolean known) {
    Map<Integer, StarPlace> atZero = new HashMap<>();
    for (PointedRun run : found.fit().runs()) {
      atZero.put(run.dec().runId(), run.atZero());
    }
    double cos = Math.cos(Math.toRadians(found.place().site().latitudeDegrees()));
    return new FieldTurn(
        known,
        about(
            atZero,
            new PolarAxis(
                found.place().site(),
                found.fit().azimuthArcmin().value(),
                found.fit().altitudeArcmin().value())),
        found.fit().draws(DRAWS).stream()
            .map(p -> new PolarAxis(found.place().site(), p.first() / cos, p.second()))
            .map(axis -> about(atZero, axis))
            .toList());
  }

  private static ToDoubleBiFunction<GuideRun, Double> about(
      Map<Integer, StarPlace> atZero, PolarAxis axis) {
    return (run, seconds) ->
        atZero.containsKey(run.id())
            ? FieldRotation.imageTurnDegrees(axis, atZero.get(run.id()), seconds)
            : 0;
  }

  /**
   * The turn where nothing but a drift is known: the axis's error across the star's hour circle
   * makes the drift, the error along it the turn, which is faster by the secant of the declination.
   *
   * @param driftArcsecPerMinute in declination
   * @see "Chauvenet (1876), Manual of Spherical and Practical Astronomy, vol. 2, on the equatorial
   *     telescope"
   */
  static FieldTurn of(Estimate driftArcsecPerMinute) {
    Estimate across = driftArcsecPerMinute.times(1 / AxisFigures.ARCSEC_PER_MINUTE_PER_ARCMIN);
    double sigma = AxisFigures.half(across) / Estimate.SIGMAS_95;
    return new FieldTurn(
        false,
        (run, seconds) -> 0,
        AxisPlaces.draws(across.value(), 0, sigma * sigma, Double.POSITIVE_INFINITY, 0, DRAWS)
            .stream()
            .map(p -> along(p.second()))
            .toList());
  }

  private static ToDoubleBiFunction<GuideRun, Double> along(double arcmin) {
    return (run, seconds) -> {
      double declination = run.pointing().declinationDegrees().orElse(0);
      return Math.abs(declination) > HIGHEST_DECLINATION
          ? 0
          : seconds
              * SiderealRate.ARCSEC_PER_SECOND
              / 3600
              * Math.toRadians(arcmin / 60)
              / Math.cos(Math.toRadians(declination));
    };
  }
}
