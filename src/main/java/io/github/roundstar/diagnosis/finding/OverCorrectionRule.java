package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import java.util.Optional;

/**
 * Corrections that chase the air: the interval of the effective gain lies above the better gain,
 * and either the offsets change sides from frame to frame (lag-1 autocorrelation surely below zero,
 * which neither seeing nor backlash makes) or the gain is surely above what is usual.
 */
final class OverCorrectionRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.OVER_CORRECTION;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return GainFinding.saving(facts, OverCorrectionRule::tooStrong)
        .then(saving -> finding(facts, saving));
  }

  private static boolean tooStrong(Facts facts, GainChange change) {
    if (facts.ladder().isPresent()) {
      return facts
          .ladder()
          .get()
          .changes(FindingCode.OVER_CORRECTION, GainFinding.word(change.axis()));
    }
    Optional<Estimate> lag1 = facts.loop(change.axis()).lag1();
    boolean changesSides = lag1.isPresent() && lag1.get().hi95() < 0;
    return change.weaker() && (changesSides || change.gain().lo95() > Thresholds.HIGH_GAIN);
  }

  private Answer<Finding> finding(Facts facts, GainFinding.Saving saving) {
    Draft draft =
        new Draft(code(), facts)
            .title(
                saving.off().isEmpty()
                    ? "Corrections chase the air"
                    : "Corrections in "
                        + GainFinding.axes(saving)
                        + " are too strong and chase the air",
                "Corrections do not chase the air");
    saving
        .off()
        .forEach(
            change ->
                facts
                    .loop(change.axis())
                    .lag1()
                    .ifPresent(
                        lag1 ->
                            draft.say(
                                "From frame to frame offsets in "
                                    + GainFinding.name(change.axis())
                                    + " correlate by "
                                    + Wording.both(lag1)
                                    + "; below zero they change sides.")));
    return GainFinding.weigh(draft, facts, saving)
        .act(
            GainFinding.action(
                facts,
                code(),
                saving.off().isEmpty()
                    ? "Lower the gain step by step."
                    : "Lower the gain of " + GainFinding.settings(saving) + "."),
            "Or expose the guide camera longer, so that the air averages out.",
            "Keep a small deadband, of about the noise floor, so that noise alone sends no pulse.")
        .lostTo("over-correction")
        .judged();
  }
}
