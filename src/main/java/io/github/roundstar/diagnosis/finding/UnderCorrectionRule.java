package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * Corrections too weak: the interval of the effective gain lies below what is usual and below the
 * better gain. Told apart from periodic error and drift, which a higher gain would leave too: there
 * the gain in use is a usual one.
 */
final class UnderCorrectionRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.UNDER_CORRECTION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return GainFinding.saving(facts, (f, change) -> tooWeak(change))
        .then(saving -> finding(facts, saving));
  }

  static boolean tooWeak(GainChange change) {
    return change.stronger() && change.gain().hi95() < Thresholds.LOW_GAIN;
  }

  private Answer<Finding> finding(Facts facts, GainFinding.Saving saving) {
    Draft draft =
        new Draft(code(), facts)
            .title(
                "Corrections in " + GainFinding.axes(saving) + " are too weak to follow the mount",
                "Corrections are strong enough");
    return GainFinding.weigh(draft, facts, saving)
        .act(
            "Raise the gain of " + GainFinding.settings(saving) + ", half of the way at first.",
            "Look at the next log: if offsets begin to change sides from frame to frame, go back a"
                + " little.")
        .lostTo("under-correction")
        .judged();
  }
}
