package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * Stars that turn about the guide star: by the images, or by the trail that the axis error makes in
 * the corner. Guiding cannot take it out; its cause is the polar axis.
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
    facts.axis().ifPresent(axis -> CornerTrail.weigh(draft, facts, axis));
    if (facts.axis().flatMap(AxisReading::cornerTrailArcsec).isEmpty()) {
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
