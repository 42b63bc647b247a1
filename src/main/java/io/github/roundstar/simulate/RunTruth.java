package io.github.roundstar.simulate;

import io.github.roundstar.model.PierSide;
import java.util.List;

/**
 * True figures of one run.
 *
 * @param id number of the run, from 1
 * @param declinationDegrees of the star [deg]
 * @param hourAngleHours at the run's first frame [h]
 * @param pierSide side of the pier the tube is on
 * @param guided whether pulses were sent
 * @param wormPhaseRadians phase of the worm at the run's first frame [rad]
 * @param ra figures of right ascension, on the sky
 * @param dec figures of declination
 * @param rotationDegreesPerHour mean rotation of the camera against the field, north through east
 * @param dithers moves of the set point
 * @param events what happened, in order of time
 */
public record RunTruth(
    int id,
    double declinationDegrees,
    double hourAngleHours,
    PierSide pierSide,
    boolean guided,
    double wormPhaseRadians,
    Axis ra,
    Axis dec,
    double rotationDegreesPerHour,
    int dithers,
    List<Event> events) {
  /** Copies. */
  public RunTruth {
    events = List.copyOf(events);
  }

  /**
   * True figures of one axis.
   *
   * @param driftArcsecPerMinute slope of a straight line through the steady drift, which leaves out
   *     worm, gears, wander, gusts and knocks
   * @param driftWithWanderArcsecPerMinute the same with the wander that came about
   * @param noiseArcsec standard deviation of the measurement error that came about, lost frames
   *     left out, divisor n
   * @param responsePositiveArcsecPerSecond speed of pulses east or north on the sky, beyond all
   *     play
   * @param responseNegativeArcsecPerSecond speed of pulses west or south
   */
  public record Axis(
      double driftArcsecPerMinute,
      double driftWithWanderArcsecPerMinute,
      double noiseArcsec,
      double responsePositiveArcsecPerSecond,
      double responseNegativeArcsecPerSecond) {}

  /**
   * Something that happened.
   *
   * @param timeSeconds since the run's start
   * @param kind gust, knock, lasting-shift, star-switch, stuck-star or cloud
   * @param size arcsec of a gust, knock, shift or switch, share of the light of a cloud
   */
  public record Event(double timeSeconds, String kind, double size) {}
}
