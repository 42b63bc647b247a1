package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;

/**
 * Sudden moves: gusts that come and go, knocks, and shifts that stay (a cable or a slipping
 * clutch). Each is surely one, since its size stands out from wander and noise, so their share is
 * that of this night; another night may have other winds.
 */
final class JoltsRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.JOLTS;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    EventTally events = facts.events();
    int gusts = events.count(EventTally.GUST);
    int knocks = events.count(EventTally.KNOCK);
    int shifts = events.count(EventTally.LASTING_SHIFT);
    Draft draft =
        new Draft(code(), facts)
            .title(
                (events.mostlyGusts() ? "Wind jolted" : "Something jolted")
                    + " the star "
                    + Wording.counted(events.jolts(), "time"),
                "Jolts are no trouble")
            .say(
                Wording.counted(gusts, "gust")
                    + ", "
                    + Wording.counted(knocks, "knock")
                    + " and "
                    + Wording.counted(shifts, "lasting shift")
                    + "; the largest moved the star by "
                    + Wording.number(events.largestJoltArcsec())
                    + " arcsec.");
    if (facts.budget().isPresent()) {
      TrailingBudget budget = facts.budget().get();
      TrailingBudget.Part part = budget.part("jolts"::equals);
      draft.share(budget.share(part, 1, 1), budget.trailingArcsec2(), part.meanSquareArcsec2());
    } else {
      draft.shareUnknown(
          "what jolts do to the star is not known: " + facts.because("/runs/*/budget"));
    }
    return (events.mostlyGusts() ? wind(draft) : cables(draft)).lostTo("jolts").judged();
  }

  private static Draft wind(Draft draft) {
    return draft
        .act(
            "Shelter the telescope from the wind, take off the dew shield where that is possible, and"
                + " lower the tripod.",
            "Leave out the exposures of the gusts; the mount itself needs nothing.")
        .caution(Cautions.TRIPOD);
  }

  private static Draft cables(Draft draft) {
    return draft
        .act(
            "Lead the cables so that none pulls anywhere between the two ends of a night.",
            "Balance both axes, and see that clutches, clamps and the tripod's screws hold.",
            "Keep off the ground near the tripod while exposing.")
        .caution(Cautions.BALANCE);
  }
}
