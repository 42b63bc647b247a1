package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * Corrections too weak: the interval of the effective gain lies below what is usual and below the
 * better gain. Told apart from periodic error and drift, which a higher gain would leave too: there
 * the gain in use is a usual one. Where the night was played again, the ladder tells.
 */
final class UnderCorrectionRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.UNDER_CORRECTION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return GainFinding.saving(facts, UnderCorrectionRule::tooWeak)
        .then(saving -> finding(facts, saving));
  }

  private static boolean tooWeak(Facts facts, GainChange change) {
    return facts
        .ladder()
        .map(
            ladder -> ladder.changes(FindingCode.UNDER_CORRECTION, GainFinding.word(change.axis())))
        .orElse(change.stronger() && change.gain().hi95() < Thresholds.LOW_GAIN);
  }

  private Answer<Finding> finding(Facts facts, GainFinding.Saving saving) {
    Draft draft =
        new Draft(code(), facts)
            .title(
                "Corrections in " + GainFinding.axes(saving) + " are too weak to follow the mount",
                "Corrections are strong enough");
    return GainFinding.weigh(draft, facts, saving)
        .act(
            GainFinding.action(
                facts,
                code(),
                "Raise the gain of "
                    + GainFinding.settings(saving)
                    + ", half of the way at first."),
            "Look at the next log: if offsets begin to change sides from frame to frame, go back a"
                + " little.")
        .lostTo("under-correction")
        .judged();
  }
}
