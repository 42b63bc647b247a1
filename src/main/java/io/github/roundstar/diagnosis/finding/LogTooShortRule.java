package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;
import io.github.roundstar.results.RunResult;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Too little was logged for a verdict: too few minutes or frames, or fewer than three turns of the
 * worm. Says how much more of it is needed.
 */
final class LogTooShortRule implements Rule {
  /** A loop's answers to some hundred frames; common practice, no source. */
  private static final double SHORTEST_RUN_MINUTES = 5;

  @Override
  public FindingCode code() {
    return FindingCode.LOG_TOO_SHORT;
  }

  @Override
  public Answer<Finding> judge(Facts facts) {
    double minutes = facts.loggedSeconds() / 60;
    int frames = facts.usedFrames();
    double more = moreMinutes(facts);
    boolean tooShort = more > 0;
    Optional<String> torn = runsTooShort(facts);
    if (!tooShort && torn.isPresent()) {
      return new Draft(code(), facts)
          .title("The runs are too short: " + torn.get(), "")
          .say(
              "Pulses, noise and drift need a run of "
                  + Wording.number(SHORTEST_RUN_MINUTES)
                  + " min at least.")
          .level(Level.WATCH, Measure.MOST_CONFIDENCE)
          .act(
              "If the guider went on without a break, join the runs: leave the column run out of"
                  + " the log, or the lines that begin runs out of the layout file.",
              "Else guide one star without a break, with pulses logged.")
          .judged();
    }
    return new Draft(code(), facts)
        .title(
            "The log is too short: record "
                + Wording.counted((int) Math.ceil(more), "minute")
                + " more in one go",
            "The log is long enough")
        .say(
            Wording.number(minutes)
                + " min and "
                + frames
                + " used frames; a verdict needs "
                + Wording.number(neededMinutes(facts))
                + " min and "
                + Thresholds.FEWEST_FRAMES
                + " frames.")
        .level(tooShort ? Level.WATCH : Level.FINE, Measure.MOST_CONFIDENCE)
        .act(
            "Guide one star for "
                + Wording.counted((int) Math.ceil(neededMinutes(facts)), "minute")
                + " without a break, with pulses logged.",
            "For the mount's own error, let it track with guiding off for three turns of the worm.")
        .judged();
  }

  /** How many runs there are and how long the longest lasts, where even that one tells nothing. */
  static Optional<String> runsTooShort(Facts facts) {
    List<RunResult> runs = facts.result().runs();
    double longest = runs.stream().mapToDouble(RunResult::durationSeconds).max().orElse(0);
    return runs.size() < 2 || longest >= 60 * SHORTEST_RUN_MINUTES
        ? Optional.empty()
        : Optional.of(
            String.format(Locale.ROOT, "the longest of %,d lasts %.0f s", runs.size(), longest));
  }

  /** Minutes that are missing; 0 when the log is long enough. */
  static double moreMinutes(Facts facts) {
    double minutes = facts.loggedSeconds() / 60;
    int frames = facts.usedFrames();
    double forFrames =
        frames >= Thresholds.FEWEST_FRAMES
            ? 0
            : frames == 0
                ? neededMinutes(facts)
                : minutes * (Thresholds.FEWEST_FRAMES / (double) frames - 1);
    return Math.max(0, Math.max(neededMinutes(facts) - minutes, forFrames));
  }

  private static double neededMinutes(Facts facts) {
    double worm =
        facts.equipment().mount().wormPeriodSeconds().orElse(Thresholds.USUAL_WORM_SECONDS);
    return Math.max(Thresholds.SHORTEST_MINUTES, Thresholds.WORM_TURNS * worm / 60);
  }
}
