package io.github.roundstar.diagnosis;

import io.github.roundstar.results.LongestExposure;
import io.github.roundstar.results.LongestExposure.Length;
import io.github.roundstar.results.NotComputed;
import io.github.roundstar.results.Planning;
import java.util.ArrayList;
import java.util.List;

/** Why figures on how to take the next night are null. */
final class PlanningReasons {
  private static final String LONGEST = "/planning/longestExposure";

  private final List<NotComputed> reasons = new ArrayList<>();

  private PlanningReasons() {}

  /**
   * The reasons.
   *
   * @param planning null where there is none at all
   * @param because why there is none
   */
  static List<NotComputed> of(Planning planning, String because) {
    PlanningReasons all = new PlanningReasons();
    if (planning == null) {
      all.note(null, "/planning", because);
      return all.reasons;
    }
    all.note(planning.longestExposure(), LONGEST, "this log cannot tell what to do");
    all.note(
        planning.guideExposure(),
        "/planning/guideExposure",
        "no other length of guide exposure could be played");
    all.note(planning.hours(), "/planning/hours", ExposureFigures.NONE_NAMED);
    LongestExposure longest = planning.longestExposure();
    if (longest != null) {
      all.note(longest.withSteps(), LONGEST + "/withSteps", "no step that could be played is due");
      all.length(longest.asItWas(), LONGEST + "/asItWas", longest.because());
      if (longest.withSteps() != null) {
        all.length(longest.withSteps(), LONGEST + "/withSteps", longest.because());
      }
    }
    if (planning.recordNext().stream().anyMatch(next -> next.halfWidthNow() == null)) {
      all.note(null, "/planning/recordNext/*/halfWidthNow", "nothing is known of the figure yet");
    }
    return all.reasons;
  }

  private void length(Length length, String pointer, String longest) {
    String beyond = "it is longer than was played: " + longest;
    String below = "it is shorter than was played";
    boolean longer = length.stays().equals(Length.LONGER);
    note(length.seconds(), pointer + "/seconds", longer ? beyond : below);
    note(length.lowSeconds(), pointer + "/lowSeconds", below);
    note(length.highSeconds(), pointer + "/highSeconds", beyond);
  }

  private void note(Object figure, String pointer, String because) {
    if (figure == null) {
      reasons.add(new NotComputed(pointer, because));
    }
  }
}
