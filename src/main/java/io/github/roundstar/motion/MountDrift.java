package io.github.roundstar.motion;

import java.util.List;

/**
 * Drift and bend of one run's motion with the corrections taken out, each piece at its own level: a
 * fit for traces and for the search of the polar axis. The drift that is told comes out of the
 * posterior.
 */
public final class MountDrift {
  private final SharedFit fit;

  private MountDrift(SharedFit fit) {
    this.fit = fit;
  }

  /** Fits beside wander and noise that are known; no figure when the run is too short. */
  public static Answer<MountDrift> of(AxisMotion motion) {
    return RunBackground.of(motion.quiet(), List.of(), motion.jolts().wanderNoise())
        .flatMap(background -> SharedFit.of(List.of(background), List.of()))
        .map(fit -> Answer.of(new MountDrift(fit)))
        .orElseGet(
            () ->
                Answer.none(
                    "too few measured frames, or offsets that never change: record at least a few"
                        + " minutes"));
  }

  /** The fit itself. */
  SharedFit fit() {
    return fit;
  }

  /** Number of the run. */
  public int runId() {
    return background().run().runId();
  }

  /** Wander and noise that the drift was told from. */
  RunBackground background() {
    return fit.model().backgrounds().get(0);
  }

  /** The motion with its unknown steps closed. */
  public LevelledMotion levelled() {
    return LevelledMotion.of(fit).get(0);
  }
}
