package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.motion.Answer;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.Level;

/**
 * Too little was logged for a verdict: too few minutes or frames, or fewer than three turns of the
 * worm. Says how much more of it is needed.
 */
final class LogTooShortRule implements Rule {
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
            "Guide one star for that long without a break, with pulses logged.",
            "For the mount's own error, let it track with guiding off for three turns of the worm.")
        .judged();
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
