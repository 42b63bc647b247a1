package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.motion.PolarAlignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A polar axis without a latitude. What an axis does to a star hardly depends on the latitude, but
 * refraction does and cannot be taken out: the axis is fitted at every latitude from which all
 * stars stood high enough, and what is told of it holds at all of them.
 *
 * @param latitudes where the site may lie
 * @param fits fits over those latitudes, from south to north
 * @param known the combination of both errors that is known best; its interval holds those of all
 *     latitudes
 */
record SitelessAxis(
    LatitudeRange latitudes, List<AxisSearch.Found> fits, PolarAlignment.Combination known) {
  /** Latitudes tried; between neighbours refraction changes little. */
  private static final int PLACES = 7;

  /** The fit, whatever it is worth; or why there is none. */
  static Answer<SitelessAxis> of(List<RunStudy> studies, Equipment equipment) {
    return PointedRuns.of(studies, equipment, Optional.empty())
        .then(
            runs ->
                LatitudeRange.of(runs)
                    .map(latitudes -> across(latitudes, runs, equipment))
                    .orElseGet(
                        () ->
                            Answer.none(
                                String.format(
                                    Locale.ROOT,
                                    "no latitude from %.0f south to %.0f north puts all stars above"
                                        + " %.0f degrees: check declinations and hour angles",
                                    LatitudeRange.FARTHEST,
                                    LatitudeRange.FARTHEST,
                                    PointedRuns.LOWEST_ALTITUDE))));
  }

  private static Answer<SitelessAxis> across(
      LatitudeRange latitudes, List<PointedRun> runs, Equipment equipment) {
    List<AxisSearch.Found> fits = new ArrayList<>();
    for (int i = 0; i < PLACES; i++) {
      double latitude =
          latitudes.fromDegrees()
              + i * (latitudes.toDegrees() - latitudes.fromDegrees()) / (PLACES - 1);
      Answer<AxisSearch.Found> fit = AxisSearch.at(Observatory.at(latitude, equipment), runs);
      if (fit.value().isEmpty()) {
        return Answer.none(fit.because());
      }
      fits.add(fit.value().get());
    }
    double end = latitudes.raisedEnd().equals(LatitudeRange.SOUTH) ? -1 : 1;
    return Answer.of(new SitelessAxis(latitudes, fits, best(fits, end)));
  }

  /** The combination whose values at all latitudes, with their intervals, reach least far. */
  private static PolarAlignment.Combination best(List<AxisSearch.Found> fits, double end) {
    PolarAlignment.Combination best = null;
    for (int degrees = 0; degrees < 180; degrees++) {
      double angle = Math.toRadians(degrees);
      PolarAlignment.Combination tried = holding(fits, end, Math.cos(angle), Math.sin(angle));
      if (best == null || width(tried.arcmin()) < width(best.arcmin())) {
        best = tried;
      }
    }
    return best;
  }

  private static PolarAlignment.Combination holding(
      List<AxisSearch.Found> fits, double end, double eastShare, double highShare) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (AxisSearch.Found found : fits) {
      // A fit speaks of the raised end at its latitude; the other end errs the opposite way.
      double turned = found.place().site().latitudeDegrees() < 0 ? -end : end;
      Estimate each = found.fit().combination(eastShare, highShare).arcmin().times(turned);
      low = Math.min(low, each.lo95());
      high = Math.max(high, each.hi95());
    }
    return new PolarAlignment.Combination(
        new Estimate((low + high) / 2, low, high), eastShare, highShare);
  }

  private static double width(Estimate figure) {
    return figure.hi95() - figure.lo95();
  }

  /** The fit at the latitude where an axis leaves least of the drifts. */
  AxisSearch.Found leastMisfit() {
    AxisSearch.Found best = fits.get(0);
    for (AxisSearch.Found each : fits) {
      if (each.fit().residual().misfitArcsecPerMinute()
          < best.fit().residual().misfitArcsecPerMinute()) {
        best = each;
      }
    }
    return best;
  }
}
