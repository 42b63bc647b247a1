package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import java.util.Optional;

/**
 * The RA motor runs too fast or too slow. Told apart from refraction and from a polar axis, which
 * move a star in RA too, by size: the drift must surely exceed what both together can make. An axis
 * that the drifts refute sets no such bound.
 */
final class TrackingRateRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.TRACKING_RATE;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    Optional<Estimate> drift =
        Pooled.estimate(
            facts.result(),
            run ->
                run.driftArcsecPerMinuteSky() == null ? null : run.driftArcsecPerMinuteSky().ra());
    if (drift.isEmpty()) {
      return Answer.none(
          facts.because("/runs/*/driftArcsecPerMinuteSky/ra", "/runs/*/driftArcsecPerMinuteSky"));
    }
    return finding(facts, drift.get());
  }

  private Answer<Finding> finding(Facts facts, Estimate drift) {
    double least = drift.covers(0) ? 0 : Math.min(Math.abs(drift.lo95()), Math.abs(drift.hi95()));
    double most = Math.max(Math.abs(drift.lo95()), Math.abs(drift.hi95()));
    double air = Thresholds.REFRACTION_RA_ARCSEC_PER_MINUTE;
    Draft draft =
        new Draft(code(), facts)
            .title(
                "The mount runs "
                    + (drift.value() > 0 ? "too fast" : "too slow")
                    + " in RA by "
                    + Wording.number(Math.abs(drift.value()))
                    + " arcsec a minute",
                "The mount keeps the rate of the sky")
            .say("Drift in RA without guiding: " + Wording.both(drift) + " arcsec a minute.");
    if (most < air) {
      return draft
          .say("Refraction alone may make as much.")
          .level(Level.FINE, Measure.MOST_CONFIDENCE)
          .judged();
    }
    Optional<AxisReading> axis = facts.axis();
    if (axis.isEmpty() || axis.get().refuted()) {
      return Answer.none(
          "the mount drifts in RA by "
              + Wording.both(drift)
              + " arcsec a minute, which may be its rate or its polar axis: "
              + axis.map(AxisReading::whyRefuted).orElseGet(() -> facts.because("/polarAxis")));
    }
    double allowed = air + Thresholds.DRIFT_PER_ARCMIN * axis.get().totalArcmin().hi95();
    return judged(draft, facts, drift, least > allowed);
  }

  private static Answer<Finding> judged(Draft draft, Facts facts, Estimate drift, boolean beyond) {
    if (!beyond) {
      return draft
          .say("Refraction and the polar axis may make as much.")
          .level(Level.FINE, Measure.MOST_CONFIDENCE)
          .judged();
    }
    if (facts.budget().isPresent()) {
      draft.part(facts.budget().get().part(Axis.RA, "drift-lag"::equals), drift);
    } else {
      draft.shareUnknown(
          "how much of the drift guiding let through is not known: "
              + facts.because("/runs/*/budget"));
    }
    return draft
        .act(
            "Set the mount's tracking to the sidereal rate, not to the Moon's or the Sun's.",
            "See whether its clock, its supply voltage and its gear ratio are set right.",
            "Look for a clutch that slips and a cable that pulls.")
        .caution(Cautions.BALANCE)
        .lostTo("tracking-rate")
        .judged();
  }
}
