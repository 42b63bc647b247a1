package io.github.roundstar.simulate;

import java.util.List;

/**
 * What the mount does wrong. Right ascension is counted at the axis, declination on the sky; a star
 * that moves east or north counts positive.
 *
 * @param guideRateSidereal declared speed of a pulse, times sidereal
 * @param worm the right-ascension worm and further gears
 * @param slack play and stiction
 * @param wanderRa random walk of the star, on the sky [arcsec per root second]
 * @param wanderDec the same in declination
 * @param response true speed of a pulse over the declared one
 * @param creep steady drifts
 * @param cameraAngleDegrees position angle of the direction that the camera takes for north [deg]
 */
public record MountPlan(
    double guideRateSidereal,
    Worm worm,
    Slack slack,
    double wanderRa,
    double wanderDec,
    Response response,
    Creep creep,
    double cameraAngleDegrees) {
  /**
   * The drive of the right-ascension axis.
   *
   * @param periodSeconds one turn of the worm [s]
   * @param harmonics parts of its error
   * @param gears further gears, which keep their phase from run to run
   * @param unsteadiness by what share a turn is larger or smaller than the next, one standard
   *     deviation
   */
  public record Worm(
      double periodSeconds, List<Harmonic> harmonics, List<Gear> gears, double unsteadiness) {
    /** Copies. */
    public Worm {
      harmonics = List.copyOf(harmonics);
      gears = List.copyOf(gears);
    }
  }

  /**
   * One harmonic of the worm.
   *
   * @param order 1 for the worm's own period, 2 for half of it
   * @param amplitudeArcsec half of peak to peak, at the axis [arcsec]
   * @param phaseRadians at worm phase zero [rad]
   */
  public record Harmonic(int order, double amplitudeArcsec, double phaseRadians) {}

  /**
   * A further gear.
   *
   * @param periodSeconds of its error [s]
   * @param amplitudeArcsec half of peak to peak, at the axis [arcsec]
   * @param phaseRadians at the start of each run [rad]
   */
  public record Gear(double periodSeconds, double amplitudeArcsec, double phaseRadians) {}

  /**
   * What swallows small moves, at the axes. Play in right ascension swallows reversals of the
   * corrections, as a worm that floats between its flanks does.
   *
   * @param raBacklashArcsec whole play [arcsec]
   * @param decBacklashArcsec whole play [arcsec]
   * @param raStictionArcsec moves withheld until they add up to this [arcsec]
   * @param decStictionArcsec moves withheld until they add up to this [arcsec]
   */
  public record Slack(
      double raBacklashArcsec,
      double decBacklashArcsec,
      double raStictionArcsec,
      double decStictionArcsec) {}

  /**
   * True speed of a pulse over the declared one. North and south are those of a tube west of the
   * pier; a flip exchanges them.
   *
   * @param east pulses east
   * @param west pulses west
   * @param north pulses north
   * @param south pulses south
   */
  public record Response(double east, double west, double north, double south) {}

  /**
   * Steady drifts of the star.
   *
   * @param rateErrorArcsecPerMinute by a wrong tracking rate, at the axis [arcsec/min]
   * @param flexureRaArcsecPerMinute by bending, on the sky [arcsec/min]
   * @param flexureDecArcsecPerMinute by bending [arcsec/min]
   */
  public record Creep(
      double rateErrorArcsecPerMinute,
      double flexureRaArcsecPerMinute,
      double flexureDecArcsecPerMinute) {}
}
