package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import java.util.Optional;

/**
 * Stars that turn about the guide star: by the images, or by the trail that the axis error makes in
 * the corner. Guiding cannot take it out; its cause is the polar axis. Told apart from flexure,
 * which moves all stars alike, by the pattern over the field that the exposures' rules look for; an
 * axis that the drifts refute predicts no trail.
 */
final class FieldRotationRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.FIELD_ROTATION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Draft draft =
        new Draft(code(), facts)
            .title("The field turns about the guide star", "The field turns too little to be seen");
    Optional<AxisReading> axis = facts.axis();
    if (axis.filter(AxisReading::refuted).isPresent()) {
      draft.shareUnknown(axis.get().whyRefuted());
    } else if (axis.flatMap(AxisReading::cornerTrailArcsec).isPresent()) {
      CornerTrail.weigh(draft, facts, axis.get());
    } else {
      draft.shareUnknown(facts.because("/polarAxis/cornerTrailArcsec", "/polarAxis"));
    }
    return draft
        .act(
            "Align the polar axis; see what the page says of it.",
            "Until then expose shorter, or choose a guide star nearer to the middle of the picture.")
        .caution(Cautions.ADJUSTERS)
        .lostTo("field-rotation")
        .judged();
  }
}
