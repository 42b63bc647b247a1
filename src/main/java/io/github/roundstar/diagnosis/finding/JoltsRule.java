package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Sentences;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import java.util.ArrayList;
import java.util.List;

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
                events.jolts() == 0
                    ? "No gust, knock or lasting shift stands out of wander and noise."
                    : kinds(gusts, knocks, shifts)
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

  private static String kinds(int gusts, int knocks, int shifts) {
    List<String> kinds = new ArrayList<>();
    kinds.add(gusts == 0 ? "" : Wording.counted(gusts, "gust"));
    kinds.add(knocks == 0 ? "" : Wording.counted(knocks, "knock"));
    kinds.add(shifts == 0 ? "" : Wording.counted(shifts, "lasting shift"));
    kinds.removeIf(String::isEmpty);
    return Sentences.list(kinds);
  }
}
