package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/** The air spreads colours towards the horizon: stars long along the vertical, more when low. */
final class AtmosphericDispersionRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.ATMOSPHERIC_DISPERSION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return ImageFinding.of(code(), facts, code().word())
        .title(
            "The air spreads the stars' colours towards the horizon",
            "The air's dispersion is no trouble")
        .act(
            "Take the target when it is higher.",
            "Use a filter that passes fewer colours, or register the colours one by one.",
            "Leave the mount as it is.")
        .judged();
  }
}
