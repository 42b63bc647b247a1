package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/** The air bends light from the picture's far side otherwise than from the guide star. */
final class DifferentialRefractionRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.DIFFERENTIAL_REFRACTION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return ImageFinding.of(code(), facts, code().word())
        .title(
            "Low in the sky the air shifts the picture against the guide star",
            "Refraction moves guide star and picture alike")
        .act(
            "Take the target when it is higher.",
            "Choose a guide star nearer to the picture, or expose shorter while it is low.",
            "Leave the mount as it is.")
        .judged();
  }
}
