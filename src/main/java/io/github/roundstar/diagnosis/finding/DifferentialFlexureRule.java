package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * The guide telescope bends against the main one: stars trail in the image while the guide star
 * stands still. Told apart exposure by exposure, where causes are given: from field rotation, which
 * turns the stars about the guide star, by the pattern over the field; from refraction, which
 * follows the altitude, by taking off what the air makes; from an error of the polar axis by the
 * guide star itself, which an axis lets drift and such flexure leaves where it is. A guide star
 * that drifts by flexure of the mount is the business of {@link PolarAxisRule}.
 */
final class DifferentialFlexureRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.DIFFERENTIAL_FLEXURE;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return ImageFinding.of(code(), facts, code().word())
        .title(
            "The guide telescope moves against the main one",
            "Guide and main telescope keep together")
        .act(
            "Tighten rings, clamps, focuser and camera of both telescopes; take away what is soft"
                + " between them.",
            "Lead cables so that none pulls at the guide telescope or a focuser.",
            "Expose shorter until it is mended; an off-axis guider ends it for good.")
        .caution(Cautions.TUBE)
        .judged();
  }
}
