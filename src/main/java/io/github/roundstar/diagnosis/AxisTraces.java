package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.motion.PolarAlignment;
import io.github.roundstar.results.AxisTrace;
import io.github.roundstar.results.Polyline;
import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.Refraction;
import io.github.roundstar.sky.StarPlace;
import io.github.roundstar.sky.TrackedStar;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Drift in declination against hour angle, and the sensor's field, ready for their charts. */
final class AxisTraces {
  private static final int POINTS = 41;

  /** How far the curve of the axis reaches beyond the runs [h]. */
  private static final double AROUND_HOURS = 1;

  private AxisTraces() {}

  /**
   * The traces; hour angles to a tenth of an hour, since exact ones tell the site.
   *
   * @param known whether both parts of the axis are known well enough to draw
   */
  static AxisTrace of(AxisSearch.Found found, boolean known, Equipment equipment) {
    PolarAlignment fit = found.fit();
    List<AxisTrace.Run> runs = new ArrayList<>();
    for (int r = 0; r < fit.runs().size(); r++) {
      runs.add(run(found, r, known));
    }
    AxisTrace.Sensor sensor = known ? sensor(FieldTurn.of(found, equipment)) : null;
    return new AxisTrace(runs, known ? axisCurve(found) : Polyline.EMPTY, sensor);
  }

  private static AxisTrace.Run run(AxisSearch.Found found, int r, boolean known) {
    PointedRun run = found.fit().runs().get(r);
    double from = hours(run, run.firstSeconds());
    double shift = Math.rint(10 * from) / 10 - from;
    double to = from + (run.lastSeconds() - run.firstSeconds()) / 3600;
    double[] x = {from + shift, (from + to) / 2 + shift, to + shift};
    Polyline model = Polyline.EMPTY;
    if (known) {
      double[] y = new double[x.length];
      for (int i = 0; i < x.length; i++) {
        double seconds = run.firstSeconds() + i * (run.lastSeconds() - run.firstSeconds()) / 2;
        y[i] = drift(found, Optional.of(found.place().air()), run.atZero().later(seconds));
      }
      model = Polyline.of(x, y);
    }
    return new AxisTrace.Run(
        run.dec().runId(), Polyline.of(x, found.fit().driftOfRun(r)), model, run.decDrift());
  }

  private static double hours(PointedRun run, double seconds) {
    double degrees = run.atZero().later(seconds).hourAngleDegrees();
    return (degrees - 360 * Math.floor((degrees + 180) / 360)) / 15;
  }

  /** What the axis alone does; it hardly depends on the declination. */
  private static Polyline axisCurve(AxisSearch.Found found) {
    List<PointedRun> runs = found.fit().runs();
    double from =
        runs.stream().mapToDouble(run -> hours(run, run.firstSeconds())).min().orElseThrow();
    double to =
        runs.stream()
            .mapToDouble(
                run ->
                    hours(run, run.firstSeconds())
                        + (run.lastSeconds() - run.firstSeconds()) / 3600)
            .max()
            .orElseThrow();
    double[] x = new double[POINTS];
    double[] y = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      x[i] = from - AROUND_HOURS + i * (to - from + 2 * AROUND_HOURS) / (POINTS - 1);
      x[i] = Math.rint(100 * x[i]) / 100;
      y[i] = drift(found, Optional.empty(), StarPlace.ofHours(x[i], 0));
    }
    return Polyline.of(x, y);
  }

  private static double drift(AxisSearch.Found found, Optional<Refraction> air, StarPlace star) {
    PolarAxis axis =
        new PolarAxis(
            found.place().site(),
            found.fit().azimuthArcmin().value(),
            found.fit().altitudeArcmin().value());
    return new TrackedStar(found.place().site(), axis, air, star.later(-30)).northArcsec(60);
  }

  private static AxisTrace.Sensor sensor(FieldTurn turn) {
    if (turn.sensor().isEmpty() || turn.exposure().isEmpty()) {
      return null;
    }
    SensorField field = turn.sensor().get();
    return new AxisTrace.Sensor(
        field.widthArcmin(),
        field.heightArcmin(),
        field.starXArcmin(),
        field.starYArcmin(),
        field.starKnown(),
        turn.degreesPerHour() * turn.exposure().getAsDouble() / 3600,
        turn.exposure().getAsDouble(),
        field.arcsecPerPixel());
  }
}
