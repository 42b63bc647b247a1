package io.github.roundstar.diagnosis.exposures;

import io.github.roundstar.model.Estimate;
import java.util.Optional;

/**
 * What an exposure is judged by. A picture that is round in its centre and long in a corner is as
 * lost as one that is long all over.
 *
 * @param shared elongation that all its stars share
 * @param corner elongation in the worst corner, where it is known
 */
record JudgedBy(Estimate shared, Optional<Estimate> corner) {
  private static final String TRAILED = "trailed";
  private static final String ROUND = "round";

  /** The image wins over the log; what its pattern cannot tell, the log's corner does. */
  static JudgedBy of(
      PredictedShape predicted, Optional<Estimate> corner, Optional<MeasuredShape> measured) {
    if (measured.isEmpty()) {
      return new JudgedBy(predicted.elongation(), corner);
    }
    boolean silent = measured.get().pattern().equals("unknown");
    return new JudgedBy(
        measured.get().elongation(),
        measured.get().corner().or(() -> silent ? corner : Optional.empty()));
  }

  /** The worse of both verdicts. */
  String verdict(double limit) {
    String all = verdict(shared, limit);
    String there = corner.map(c -> verdict(c, limit)).orElse(ROUND);
    if (all.equals(TRAILED) || there.equals(TRAILED)) {
      return TRAILED;
    }
    return all.equals(ROUND) ? there : all;
  }

  /** Whether the corner alone makes it trailed. */
  boolean onlyInCorner(double limit) {
    return verdict(limit).equals(TRAILED) && !verdict(shared, limit).equals(TRAILED);
  }

  /** By the interval and the limit alone: within it, beyond it, or across. */
  static String verdict(Estimate elongation, double limit) {
    if (elongation.lo95() > limit) {
      return TRAILED;
    }
    return elongation.hi95() <= limit ? ROUND : "borderline";
  }
}
