package io.github.roundstar.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the telescope looked, as far as the log tells.
 *
 * @param declinationDegrees declination of the guide star [deg, -90..90]
 * @param hourAngleHours hour angle at the run's first frame [h, west positive, -12..12]
 * @param pierSide side of the pier the tube is on
 * @param latitudeDegrees latitude of the site [deg, north positive]
 * @param rightAscensionHours right ascension of the guide star [h, 0..24]
 * @param longitudeDegrees longitude of the site [deg, east positive]
 */
public record Pointing(
    OptionalDouble declinationDegrees,
    OptionalDouble hourAngleHours,
    Optional<PierSide> pierSide,
    OptionalDouble latitudeDegrees,
    OptionalDouble rightAscensionHours,
    OptionalDouble longitudeDegrees) {
  /** Nothing known. */
  public static final Pointing UNKNOWN =
      new Pointing(
          OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());

  /** Of a log that tells neither right ascension nor longitude. */
  public Pointing(
      OptionalDouble declinationDegrees,
      OptionalDouble hourAngleHours,
      Optional<PierSide> pierSide,
      OptionalDouble latitudeDegrees) {
    this(
        declinationDegrees,
        hourAngleHours,
        pierSide,
        latitudeDegrees,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /** The same with another hour angle. */
  public Pointing at(double hours) {
    return new Pointing(
        declinationDegrees,
        OptionalDouble.of(hours),
        pierSide,
        latitudeDegrees,
        rightAscensionHours,
        longitudeDegrees);
  }
}
