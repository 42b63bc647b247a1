package io.github.roundstar.report;

import io.github.roundstar.model.GuidingMode;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;

/** Whether the mount was guided or left to itself, and how long it was watched. */
final class Guiding {
  private Guiding() {}

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
