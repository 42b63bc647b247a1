package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.sky.Site;
import java.util.List;
import java.util.Optional;

/**
 * Latitudes from which every star of a night stood high enough to be worth recording.
 *
 * @param fromDegrees southern end, whole degrees [deg]
 * @param toDegrees northern end [deg]
 */
record LatitudeRange(double fromDegrees, double toDegrees) {
  /** Hardly anybody sets up a mount nearer to a pole of the Earth [deg]. */
  static final double FARTHEST = 65;

  static final String NORTH = "north";
  static final String SOUTH = "south";

  /** Neither hemisphere can be told. */
  static final String UNKNOWN = "";

  /** The tropics: a night that may be from there or from one hemisphere is taken to be of that. */
  private static final double NEAR_EQUATOR = 23.5;

  /**
   * The range; nothing when there is no such latitude. The altitude of a star is one sinusoid in
   * the latitude, so that the latitudes hang together.
   */
  static Optional<LatitudeRange> of(List<PointedRun> runs) {
    double from = Double.NaN;
    double to = Double.NaN;
    for (double latitude = -FARTHEST; latitude <= FARTHEST; latitude++) {
      Site site = new Site(latitude);
      if (runs.stream().allMatch(run -> highEnough(site, run))) {
        from = Double.isNaN(from) ? latitude : from;
        to = latitude;
      }
    }
    return Double.isNaN(from) ? Optional.empty() : Optional.of(new LatitudeRange(from, to));
  }

  private static boolean highEnough(Site site, PointedRun run) {
    return Math.min(
            site.altitudeDegrees(run.atZero().later(run.firstSeconds())),
            site.altitudeDegrees(run.atZero().later(run.lastSeconds())))
        >= PointedRuns.LOWEST_ALTITUDE;
  }

  /** Which end of the axis is raised: north, south, or not known. */
  String raisedEnd() {
    if (fromDegrees >= -NEAR_EQUATOR) {
      return NORTH;
    }
    return toDegrees <= NEAR_EQUATOR ? SOUTH : UNKNOWN;
  }
}
