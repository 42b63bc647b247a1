package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.HourAngles;
import io.github.roundstar.sky.Site;
import io.github.roundstar.sky.StarPlace;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the zenith is, seen from a star.
 *
 * @param positionAngleDegrees the parallactic angle [deg]
 * @param distanceDegrees zenith distance of the star [deg]
 */
record ZenithDirection(double positionAngleDegrees, double distanceDegrees) {
  /**
   * At a time of a run; nothing where latitude, declination or hour angle are not known, or the
   * hour angle is contradicted.
   */
  static Optional<ZenithDirection> of(GuideRun run, Equipment equipment, double seconds) {
    OptionalDouble latitude = equipment.latitudeDegrees(run.pointing());
    OptionalDouble declination = run.pointing().declinationDegrees();
    Optional<Double> hourAngle = HourAngles.of(run, equipment).value();
    if (latitude.isEmpty() || declination.isEmpty() || hourAngle.isEmpty()) {
      return Optional.empty();
    }
    Site site = new Site(latitude.getAsDouble());
    StarPlace star =
        StarPlace.ofHours(hourAngle.get(), declination.getAsDouble())
            .later(seconds - run.frames().timeSeconds(0));
    double angle = site.parallacticAngleDegrees(star);
    return Optional.of(
        new ZenithDirection(((angle % 180) + 180) % 180, 90 - site.altitudeDegrees(star)));
  }
}
