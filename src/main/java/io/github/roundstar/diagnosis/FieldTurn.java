package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.PointedRun;
import io.github.roundstar.sky.FieldRotation;
import io.github.roundstar.sky.PolarAxis;
import io.github.roundstar.sky.StarPlace;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the field turns about the guide star, and what that does in the corners.
 *
 * @param degreesPerHour fastest turn of the image in the night, north through east [deg/h]
 * @param sensor the main camera's field, where it is known
 * @param exposure the exposure in use [s]
 */
record FieldTurn(double degreesPerHour, Optional<SensorField> sensor, OptionalDouble exposure) {
  /** Places of a run at which the rate is asked. */
  private static final int PLACES = 9;

  private static final double HALF_PIXEL = 0.5;

  static FieldTurn of(AxisSearch.Found found, Equipment equipment) {
    PolarAxis axis =
        new PolarAxis(
            found.place().site(),
            found.fit().azimuthArcmin().value(),
            found.fit().altitudeArcmin().value());
    double fastest = 0;
    for (PointedRun run : found.fit().runs()) {
      for (int i = 0; i < PLACES; i++) {
        double share = i / (PLACES - 1.0);
        StarPlace star =
            run.atZero()
                .later(run.firstSeconds() + share * (run.lastSeconds() - run.firstSeconds()));
        double rate = 60 * FieldRotation.imageTurnDegrees(axis, star.later(-30), 60);
        fastest = Math.abs(rate) > Math.abs(fastest) ? rate : fastest;
      }
    }
    return new FieldTurn(fastest, SensorField.of(equipment), equipment.imaging().exposureSeconds());
  }

  Optional<Double> exposureSeconds() {
    return exposure.stream().boxed().findFirst();
  }

  /** From the guide star to the farthest corner [arcmin]. */
  Optional<Double> cornerArcmin() {
    return sensor.map(SensorField::farthestArcmin);
  }

  /** Longest trail in a corner in one exposure [arcsec]. */
  Optional<Double> cornerTrailArcsec() {
    return exposureSeconds().flatMap(seconds -> sensor.map(field -> trail(field, seconds)));
  }

  /** Exposure with half a pixel of trail in the farthest corner [s]; nothing when nothing turns. */
  Optional<Double> longestExposureSeconds() {
    return sensor
        .filter(field -> degreesPerHour != 0)
        .map(field -> HALF_PIXEL * field.arcsecPerPixel() / trail(field, 1));
  }

  private double trail(SensorField field, double seconds) {
    return FieldRotation.trailArcsec(60 * field.farthestArcmin(), degreesPerHour * seconds / 3600);
  }
}
