package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.Optional;

/**
 * Settings come before tools: what is slow against the loop is judged as a usual gain would leave
 * it, where under-correction is a finding of its own.
 */
final class SettingsFirst {
  private SettingsFirst() {}

  /**
   * Share of a slow cause's mean square that a usual gain leaves; 1 where the gain in use is not
   * the trouble. Slow motion goes with one over the gain.
   */
  static double slowShareLeft(Facts facts, Axis axis) {
    Optional<GainChange> change =
        GainChange.of(facts, axis).value().filter(UnderCorrectionRule::tooWeak);
    boolean found =
        change.isPresent()
            && new UnderCorrectionRule()
                .judge(facts)
                .value()
                .map(Finding::level)
                .filter(level -> level.atLeast(Level.WORTH_FIXING))
                .isPresent();
    return found ? Math.pow(change.get().gain().value() / Thresholds.USUAL_GAIN, 2) : 1;
  }
}
