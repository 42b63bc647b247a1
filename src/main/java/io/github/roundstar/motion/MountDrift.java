package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.List;

/**
 * Drift of the mount in one axis of one run: the slope of the motion with the corrections taken
 * out, each piece at its own level, wander and noise fitted beside it. The interval carries the
 * wander, which no length of averaging within the run can tell from drift.
 */
public final class MountDrift {
  private final SharedFit fit;

  private MountDrift(SharedFit fit) {
    this.fit = fit;
  }

  /** Fits; no figure when the run is too short or the star never moved. */
  public static Answer<MountDrift> of(AxisRun run) {
    return RunBackground.of(run, List.of())
        .flatMap(
            white ->
                SharedFit.of(List.of(white), List.of())
                    .flatMap(fit -> fit.remembering(List.of(white.remembering(List.of())))))
        .map(fit -> Answer.of(new MountDrift(fit)))
        .orElseGet(
            () ->
                Answer.none(
                    "too few measured frames, or offsets that never change: record at least a few"
                        + " minutes"));
  }

  /** The slope [arcsec/min]. */
  public Estimate arcsecPerMinute() {
    return ToneReading.driftPerSecond(fit, 0).times(60);
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
