package io.github.roundstar.compare;

import io.github.roundstar.compare.Figure.Kind;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.List;

/** Drift of the mount with the corrections taken out, right ascension at the axis. */
final class DriftFigures {
  /** Nearer to the pole the division by the cosine of the declination is refused. */
  private static final double MOST_DECLINATION_DEG = 85;

  private static final Tolerance MARGIN =
      new Tolerance(0.1, 0, "half an arcsec in five minutes, which one pulse takes away");
  private static final Tolerance SCATTER =
      new Tolerance(0.1, 0, "flexure and temperature; common practice, no source");

  private DriftFigures() {}

  static List<Figure> all() {
    return List.of(
        figure("drift-ra", "size of the drift in RA", DriftFigures::ra),
        figure("drift-dec", "size of the drift in Dec", DriftFigures::dec));
  }

  private static Figure figure(
      String key, String name, java.util.function.Function<NightResult, Reading> reading) {
    return new Figure(key, name, Kind.DRIFT, "arcsec/min", Aim.nearer(0), MARGIN, SCATTER, reading);
  }

  private static Reading ra(NightResult night) {
    return Reading.of(
        OverRuns.mean(night, DriftFigures::raAtAxis),
        Why.missing(night, "/night/driftArcsecPerMinuteSky/ra"));
  }

  private static Reading dec(NightResult night) {
    return Reading.of(
        OverRuns.mean(
            night,
            run ->
                run.driftArcsecPerMinuteSky() == null ? null : run.driftArcsecPerMinuteSky().dec()),
        Why.missing(night, "/night/driftArcsecPerMinuteSky/dec"));
  }

  /** Drift of a run in right ascension at the axis; null when not known. */
  static Estimate raAtAxis(RunResult run) {
    if (run.driftArcsecPerMinuteSky() == null
        || run.driftArcsecPerMinuteSky().ra() == null
        || run.declinationDeg() == null
        || Math.abs(run.declinationDeg()) > MOST_DECLINATION_DEG) {
      return null;
    }
    double cosine = Math.cos(Math.toRadians(run.declinationDeg()));
    return run.driftArcsecPerMinuteSky().ra().times(1 / cosine);
  }
}
