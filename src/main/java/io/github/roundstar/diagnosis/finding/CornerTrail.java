package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.results.Level;
import java.util.OptionalDouble;

/**
 * What field rotation does in the corner of a picture: a trail that surely makes stars longer than
 * the user's limit loses every exposure; one surely above half an imaging pixel is worth seeing to.
 */
final class CornerTrail {
  private CornerTrail() {}

  /** Adds the trail and its level, where the trail is known. */
  static void weigh(Draft draft, Facts facts, AxisReading axis) {
    if (axis.cornerTrailArcsec().isEmpty()) {
      return;
    }
    Estimate trail = axis.cornerTrailArcsec().get();
    draft.say(
        "Field rotation draws stars in the corner out by " + Wording.both(trail) + " arcsec.");
    OptionalDouble longest = AxisReading.longestTrailArcsec(facts.equipment());
    OptionalDouble scale = facts.equipment().imaging().arcsecPerPixel();
    double worth = Thresholds.CORNER_PIXELS * scale.orElse(Double.POSITIVE_INFINITY);
    if (longest.isPresent() && trail.lo95() > longest.getAsDouble()) {
      draft.level(Level.FIX_FIRST, Measure.MOST_CONFIDENCE);
    } else if (trail.lo95() > worth) {
      draft.level(Level.WORTH_FIXING, Measure.MOST_CONFIDENCE);
    } else if (trail.hi95() < worth) {
      draft.level(Level.FINE, Measure.MOST_CONFIDENCE);
    }
  }
}
