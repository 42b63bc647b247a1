package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Guided;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.RunResult;
import java.util.List;
import java.util.Optional;

/**
 * A star that answers no pulse, such as a hot pixel: nothing was guided. Without the measured
 * response nobody can tell whether the star answers.
 */
final class StuckStarRule implements Rule {
  /** Fewer frames of the same offset may be chance or coarse rounding. */
  private static final int FEWEST_FRAMES = 60;

  @Override
  public FindingCode code() {
    return FindingCode.STUCK_STAR;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    double stuck = 0;
    double pushed = 0;
    double all = 0;
    for (RunResult run : facts.result().runs()) {
      all += run.durationSeconds();
      boolean here = run.events().stream().anyMatch(e -> EventTally.STUCK_STAR.equals(e.kind()));
      stuck += here ? run.durationSeconds() : 0;
      pushed += here && run.mode() == GuidingMode.GUIDED ? run.durationSeconds() : 0;
    }
    Optional<String> still = stuck > 0 ? Optional.empty() : stillAxis(facts);
    if (still.isPresent()) {
      return stillAxis(facts, still.get());
    }
    boolean answered = facts.pulses().ra().isPresent() || facts.pulses().dec().isPresent();
    if (all == 0 || (stuck == 0 && !answered)) {
      return Answer.none(facts.because("/runs/*/responseArcsecPerSecond/ra"));
    }
    double share = stuck / all;
    boolean asked = pushed > 0 || stuck == 0;
    return new Draft(code(), facts)
        .title(
            asked
                ? "The guide star answers no pulse: it may be a hot pixel"
                : "The guide star never moves, though no pulse was sent: it may be a hot pixel, or"
                    + " the log stands still",
            "The guide star answers the pulses")
        .say(
            stuck == 0
                ? "The star moves when a pulse is sent."
                : "In "
                    + Wording.percent(share)
                    + (asked
                        ? " of the time the star stayed where it was whatever pulse was sent."
                        : " of the time every frame gives the very same place, and no pulse was"
                            + " sent."))
        .timeLost(new Estimate(share, share, share), stuck / 3600)
        .act(
            "Take a dark frame for the guide camera and have it subtracted.",
            "Choose another star, larger than one pixel, and see that it moves when a pulse is"
                + " sent.",
            "If no star answers, check the guide cable and the mount's guide setting.")
        .caution(Cautions.CABLES)
        .judged();
  }

  /** An axis whose offsets are the same in every frame of every run, while the other's are not. */
  private static Optional<String> stillAxis(Facts facts) {
    List<Guided> guided =
        facts.result().runs().stream()
            .filter(run -> run.guided() != null && run.counts().used() >= FEWEST_FRAMES)
            .map(RunResult::guided)
            .toList();
    boolean ra = guided.stream().allMatch(g -> g.ra().rmsArcsec() == 0);
    boolean dec = guided.stream().allMatch(g -> g.dec().rmsArcsec() == 0);
    return guided.isEmpty() || ra == dec
        ? Optional.empty()
        : Optional.of(ra ? "right ascension" : "declination");
  }

  private Answer<Finding> stillAxis(Facts facts, String axis) {
    return new Draft(code(), facts)
        .title("The offsets in " + axis + " never change: nothing can be said of that axis", "")
        .say("Every used frame gives the very same offset in " + axis + "; no real star does.")
        .level(Level.WORTH_FIXING, Measure.MOST_CONFIDENCE)
        .act(
            "Look into the log: the column may be filled with one value, or belong to something"
                + " else.",
            "See that the guider measures this axis, and logs what it measures.")
        .judged();
  }
}
