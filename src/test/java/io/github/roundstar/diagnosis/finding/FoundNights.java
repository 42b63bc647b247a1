package io.github.roundstar.diagnosis.finding;

import static io.github.roundstar.diagnosis.finding.MadeUpNight.about;
import static io.github.roundstar.diagnosis.finding.MadeUpNight.sound;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;

/** A made-up night for each code, in which its finding is there to be seen. */
final class FoundNights {
  private FoundNights() {}

  /** The finding of such a night, with exposures lost to it. */
  static Finding found(FindingCode code) {
    String cause = code.word();
    return night(code).exposures(6, 4, cause).diagnosis().findings().stream()
        .filter(finding -> finding.code().equals(cause))
        .findFirst()
        .orElseThrow();
  }

  static MadeUpNight night(FindingCode code) {
    return switch (code) {
      case STUCK_STAR -> sound().withoutResponse("none").events("stuck-star", 1, null);
      case LOG_TOO_SHORT -> sound().seconds(600);
      case CAMERA_ANGLE -> sound().crossAxis(about(30, 1));
      case PIXEL_SCALE -> sound().pulses(about(0.6, 0.03), about(0.6, 0.03));
      case PULSE_STRENGTH -> sound().pulses(about(0.6, 0.03), about(1, 0.03));
      case UNDER_CORRECTION -> sound().gain(Axis.RA, 0.15, 0.02, 0.7).part(Axis.RA, "wander", 1);
      case OVER_CORRECTION ->
          sound()
              .gain(Axis.RA, 1.2, 0.05, -0.3)
              .replay(Axis.RA, 1.2, 0.7)
              .replay(Axis.RA, 0.4, 0.3)
              .replay(Axis.DEC, 0.6, 0.3);
      case SLOW_SETTLING -> sound().settling(20, 75.0, 75.0, 0.5);
      case TRACKING_RATE ->
          sound()
              .raDrift(about(4, 0.1))
              .axis(about(4, 1), 0.1, "two-pointings")
              .part(Axis.RA, "drift-lag", 0.8);
      case SEEING_BOUND -> sound().noise(Axis.RA, 0.3, 0.005).noise(Axis.DEC, 0.3, 0.005);
      case CLOUDS -> sound().events("cloud", 2, null).frames(700, 300);
      case AXIS_IMBALANCE -> sound().eastWest(about(1.3, 0.03), about(0.7, 0.03));
      case JOLTS -> sound().events("gust", 40, 3.0).part(Axis.RA, "jolts", 0.8);
      case FIELD_ROTATION, POLAR_AXIS ->
          sound().axis(about(20, 1), 0.1, "two-pointings").part(Axis.DEC, "drift-lag", 0.8);
      case PERIODIC_ERROR -> sound().worm(6, 0.1).part(Axis.RA, "periodic:worm", 1);
      case DEC_BACKLASH -> sound().play(about(4, 0.1)).part(Axis.DEC, "backlash", 1);
      case DIFFERENTIAL_REFRACTION, ATMOSPHERIC_DISPERSION, OPTICS, DIFFERENTIAL_FLEXURE -> sound();
    };
  }
}
