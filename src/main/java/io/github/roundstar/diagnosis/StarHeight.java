package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How high a run's star stood, refraction left out.
 *
 * @param site the horizon
 * @param first where the star stood at the run's first frame
 */
record StarHeight(Site site, StarPlace first) {
  /** Below this the secant of the zenith distance is no airmass any more [deg]. */
  private static final double LOWEST = 5;

  /** Nothing unless latitude, declination and hour angle are surely known. */
  static Optional<StarHeight> of(GuideRun run, Equipment equipment) {
    OptionalDouble declination = run.pointing().declinationDegrees();
    Optional<Site> site = Observatory.of(List.of(run), equipment).value().map(Observatory::site);
    Optional<Double> hours = HourAngles.of(run, equipment).value();
    return declination.isEmpty() || site.isEmpty() || hours.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new StarHeight(site.get(), StarPlace.ofHours(hours.get(), declination.getAsDouble())));
  }

  /** Altitude so long after the first frame [deg]. */
  double altitudeDegrees(double seconds) {
    return site.altitudeDegrees(first.later(seconds));
  }

  /** Secant of the zenith distance; nothing near the horizon. */
  OptionalDouble airmass(double seconds) {
    double altitude = altitudeDegrees(seconds);
    return altitude < LOWEST
        ? OptionalDouble.empty()
        : OptionalDouble.of(1 / Math.sin(Math.toRadians(altitude)));
  }
}
