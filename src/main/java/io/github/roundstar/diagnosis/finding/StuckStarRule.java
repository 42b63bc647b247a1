package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.RunResult;

/**
 * A star that answers no pulse, such as a hot pixel: nothing was guided. Without the measured
 * response nobody can tell whether the star answers.
 */
final class StuckStarRule implements Rule {
  @Override
  public FindingCode code() {
    return FindingCode.STUCK_STAR;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    double stuck = 0;
    double all = 0;
    for (RunResult run : facts.result().runs()) {
      all += run.durationSeconds();
      boolean here = run.events().stream().anyMatch(e -> EventTally.STUCK_STAR.equals(e.kind()));
      stuck += here ? run.durationSeconds() : 0;
    }
    boolean answered = facts.pulses().ra().isPresent() || facts.pulses().dec().isPresent();
    if (all == 0 || (stuck == 0 && !answered)) {
      return Answer.none(facts.because("/runs/*/responseArcsecPerSecond/ra"));
    }
    double share = stuck / all;
    return new Draft(code(), facts)
        .title(
            "The guide star answers no pulse: it may be a hot pixel",
            "The guide star answers the pulses")
        .say(
            stuck == 0
                ? "The star moves when a pulse is sent."
                : "In "
                    + Wording.percent(share)
                    + " of the time the star stayed where it was whatever pulse was sent.")
        .timeLost(new Estimate(share, share, share), stuck / 3600)
        .act(
            "Take a dark frame for the guide camera and have it subtracted.",
            "Choose another star, larger than one pixel, and see that it moves when a pulse is"
                + " sent.",
            "If no star answers, check the guide cable and the mount's guide setting.")
        .caution(Cautions.CABLES)
        .judged();
  }
}
