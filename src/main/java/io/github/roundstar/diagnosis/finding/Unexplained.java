package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import java.util.Optional;

/** Motion that is there, matters, and has no finding that explains it. */
final class Unexplained {
  private Unexplained() {}

  /**
   * What a verdict of a night without a leading finding has to own up to, as the end of a sentence;
   * empty when neither wander nor drift surely makes a tenth of the trailing.
   */
  static Optional<String> words(Facts facts) {
    return facts.budget().flatMap(Unexplained::words);
  }

  private static Optional<String> words(TrailingBudget budget) {
    Estimate wander = share(budget, "wander");
    Estimate drift = share(budget, "drift-lag");
    Estimate larger = wander.value() > drift.value() ? wander : drift;
    if (larger.lo95() < Thresholds.share(Thresholds.WORTH_FIXING)) {
      return Optional.empty();
    }
    String much = Wording.percent(Measure.possible(larger)) + " of the trailing is ";
    return Optional.of(
        larger == wander
            ? much
                + "wander without a period, as of cables, clamps or flexure: record an hour with"
                + " guiding off"
            : much
                + "drift that no known cause explains: record a second star, hours of hour angle"
                + " away");
  }

  private static Estimate share(TrailingBudget budget, String cause) {
    return budget.share(budget.part(cause::equals), 1, 1);
  }
}
