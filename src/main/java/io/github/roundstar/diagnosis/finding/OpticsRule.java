package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * Stars long by optics, tilt or focus: a pattern over the field that the guide log does not hold.
 */
final class OpticsRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.OPTICS;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return ImageFinding.of(code(), facts, code().word(), "focus")
        .title("Optics or focus make the stars long, not the mount", "Optics and focus are good")
        .act(
            "Focus anew, and again as the night cools.",
            "Check the spacing of a corrector and the tilt of the camera.",
            "Collimate the telescope.",
            "Leave the mount as it is.")
        .caution(Cautions.TUBE)
        .judged();
  }
}
