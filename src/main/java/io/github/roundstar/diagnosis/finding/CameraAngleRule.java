package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import java.util.Optional;

/**
 * A pulse in RA moves the star in Dec too: the guiding program takes the camera to be turned
 * otherwise than it is. The sine of the angle is the share of each correction that goes astray.
 */
final class CameraAngleRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.CAMERA_ANGLE;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Optional<Estimate> angle = facts.pulses().crossAxisDeg();
    return angle
        .map(degrees -> finding(facts, degrees))
        .orElseGet(
            () ->
                Answer.none(
                    facts.because(
                        "/runs/*/responseArcsecPerSecond/crossAxisDeg",
                        "/runs/*/responseArcsecPerSecond")));
  }

  private Answer<Finding> finding(Facts facts, Estimate degrees) {
    Estimate off = Deviation.from(degrees, 0);
    return new Draft(code(), facts)
        .title(
            "The camera is turned by "
                + Wording.number(off.value())
                + " degrees against what guiding takes it to be",
            "The camera's angle is right")
        .say(
            "Pulses in RA move the star at "
                + Wording.both(degrees)
                + " degrees to where they should.")
        .spoils(new Estimate(sine(off.value()), sine(off.lo95()), sine(off.hi95())))
        .act(
            "Have the guiding program measure the camera's angle anew with its own trial moves.",
            "Do so after every turn of the camera, and check that its ring holds.")
        .caution(Cautions.TUBE)
        .lostTo("camera-angle")
        .judged();
  }

  private static double sine(double degrees) {
    return Math.sin(Math.toRadians(Math.min(90, degrees)));
  }
}
