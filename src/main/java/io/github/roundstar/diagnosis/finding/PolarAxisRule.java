package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.PolarAxis;

/**
 * The mount's axis does not point at the pole: drift that guiding has to follow in Dec, and
 * exposures lost to it or to the field rotation that it makes. A drift that does not follow from an
 * axis is no reason to turn the adjusters: the axis must be surely off the pole.
 *
 * <p>Told apart from flexure by whether an axis explains the drifts of all runs, which change with
 * hour angle and declination as only an axis makes them ({@code consistent} of the polar axis). A
 * regular drift beside the axis takes its part of the trailing away; drifts that no axis makes
 * leave nothing to say of it; and a single run, which cannot be tested, is believed less.
 */
final class PolarAxisRule implements Rule {
  /** What cannot be tested may be flexure as well. */
  private static final double TRUST_UNTESTED = 0.7;

  @Override
  public FindingCode code() {
    return FindingCode.POLAR_AXIS;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    return facts
        .axis()
        .map(axis -> finding(facts, axis))
        .or(() -> AxisReading.leastArcmin(facts.result()).map(least -> finding(facts, least)))
        .orElseGet(() -> Answer.none(facts.because("/polarAxis", "/polarAxis/totalArcmin")));
  }

  /** Where a part of the error is known. */
  private Answer<Finding> finding(Facts facts, Estimate least) {
    String because = facts.because("/polarAxis", "/polarAxis/totalArcmin");
    Draft draft =
        new Draft(code(), facts)
            .title(
                "The mount's axis points at least "
                    + Wording.number(least.value())
                    + " arcmin off the pole",
                "As far as its drift tells, the polar axis is good enough")
            .say(
                "The part of its distance from the pole that the drift tells is "
                    + Wording.both(least)
                    + " arcmin; the other part is not known: "
                    + because
                    + ".");
    if (facts.budget().isPresent()) {
      draft.part(facts.budget().get().part(Axis.DEC, "drift-lag"::equals), least);
    } else {
      draft.shareUnknown(because);
    }
    return draft
        .trustAtMost(TRUST_UNTESTED)
        .act(
            "Align the axis anew by the drift of a star.",
            "Record again and see whether the drift is gone.")
        .caution(Cautions.ADJUSTERS)
        .lostTo("polar-axis", "field-rotation")
        .judged();
  }

  private Answer<Finding> finding(Facts facts, AxisReading axis) {
    if (axis.refuted()) {
      return Answer.none(axis.whyRefuted());
    }
    Estimate total = axis.totalArcmin();
    Draft draft =
        new Draft(code(), facts)
            .title(
                "The mount's axis points " + Wording.number(total.value()) + " arcmin off the pole",
                "The polar axis is good enough")
            .say("Distance from the pole: " + Wording.both(total) + " arcmin.");
    if (facts.budget().isPresent()) {
      double left = axis.shareOfDrift();
      draft.part(
          facts.budget().get().part(Axis.DEC, "drift-lag"::equals).times(left),
          total.lo95() > 0 ? total : new Estimate(total.value(), 0, total.hi95()));
    } else {
      draft.shareUnknown(
          "how much of the drift guiding let through is not known: "
              + facts.because("/runs/*/budget"));
    }
    test(draft, axis);
    CornerTrail.weigh(draft, facts, axis);
    return draft
        .act(turn(axis.axis()), "Record again and see whether the drift is gone.")
        .caution(Cautions.ADJUSTERS)
        .lostTo("polar-axis", "field-rotation")
        .judged();
  }

  /** What the test against flexure says. */
  private static void test(Draft draft, AxisReading axis) {
    if (axis.proved()) {
      draft.say("The drifts of all runs are those of an axis, so that nothing bends by as much.");
    } else if (axis.axis().beside() != null) {
      draft.say(
          "Beside it "
              + Wording.both(axis.axis().beside().arcsecPerMinute())
              + " arcsec a minute of drift in Dec are none of the axis's: something bends or slips.");
    } else {
      draft
          .trustAtMost(TRUST_UNTESTED)
          .say(
              "One pointing cannot tell an axis from a telescope that bends; a second, six hours of"
                  + " hour angle away or nearly so, would.")
          .act("Record half an hour near the meridian and half an hour low in the east or west.");
    }
  }

  private static String turn(PolarAxis axis) {
    String altitude = way(axis.altitudeArcmin(), "Lower", "Raise", "");
    String azimuth = way(axis.azimuthArcmin(), "Turn", "Turn", " to the west| to the east");
    if (altitude.isEmpty() && azimuth.isEmpty()) {
      return "Align the axis anew by the drift of a star.";
    }
    return altitude.isEmpty()
        ? azimuth + "."
        : azimuth.isEmpty() ? altitude + "." : altitude + ", then " + Wording.small(azimuth) + ".";
  }

  /** The step that takes an error away; none where its interval holds zero. */
  private static String way(Estimate error, String positive, String negative, String sides) {
    if (error == null || error.covers(0)) {
      return "";
    }
    boolean above = error.value() > 0;
    String[] side = sides.isEmpty() ? new String[] {"", ""} : sides.split("\\|");
    return (above ? positive : negative)
        + " the raised end of the axis"
        + (above ? side[0] : side[1])
        + " by "
        + Wording.number(Math.abs(error.value()))
        + " arcmin";
  }
}
