package io.github.roundstar.report;

import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.report.words.Numbers;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.Optional;

/** Whether the mount was guided or left to itself, and how long it was watched. */
final class Guiding {
  /** Of fewer frames nothing is said about how the star moved. */
  private static final int FEWEST_FRAMES = 10;

  private Guiding() {}

  /** Why nothing is said about how the star moved; empty when there are frames enough. */
  static Optional<String> tooFew(NightResult result) {
    int used = result.runs().stream().mapToInt(run -> run.counts().used()).sum();
    return used >= FEWEST_FRAMES
        ? Optional.empty()
        : Optional.of(
            "Only "
                + Numbers.counted(used, "frame was", "frames were")
                + " used: too few to tell how the star moved.");
  }

  /** Whether no run of the night was guided. */
  static boolean leftAlone(NightResult result) {
    return !result.runs().isEmpty()
        && result.runs().stream().allMatch(run -> run.mode() == GuidingMode.UNGUIDED);
  }

  /** First to last frame, summed over the runs. */
  static double loggedSeconds(NightResult result) {
    return result.runs().stream().mapToDouble(RunResult::durationSeconds).sum();
  }
}
