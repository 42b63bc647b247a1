package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.posterior.Figure;
import java.util.Optional;

/**
 * A run's motion in one axis with the corrections taken out as the posterior of the night has them.
 *
 * @param run the motion
 * @param quiet the same without its jolts
 * @param jolts what was found of those, with wander and noise of the quiet time
 * @param effect what the pulses do
 * @param noiseShare noise of this run over that of all runs
 * @param known what the night tells of the axis
 */
public record AxisMotion(
    AxisRun run,
    AxisRun quiet,
    JoltFree jolts,
    PulseEffect effect,
    double noiseShare,
    AxisKnowledge known) {
  /** Noise of the star in this run, on the sky [arcsec]. */
  public Estimate noiseArcsec() {
    Figure night = known.noiseArcsec();
    Estimate all = night.estimate().times(noiseShare);
    double ofFrames =
        noiseShare == 1
            ? 0
            : Estimate.SIGMAS_95 / Math.sqrt(2.0 * Math.max(1, quiet.motion().size()));
    double below = Math.log(all.value() / all.lo95());
    double above = Math.log(all.hi95() / all.value());
    return new Estimate(
        all.value(),
        all.value() * Math.exp(-Math.hypot(below, ofFrames)),
        all.value() * Math.exp(Math.hypot(above, ofFrames)));
  }

  /** Strength of pulses east or north [declared]. */
  public Figure oneWay() {
    return known.oneWay(run.runId());
  }

  /** Strength of pulses west or south [declared]. */
  public Figure otherWay() {
    return known.otherWay(run.runId());
  }

  /** What drift, gears, wander and noise leave, made white; nothing of a run that is too short. */
  public Optional<double[]> whiteResiduals() {
    return RunBackground.of(quiet, known.families(), jolts.wanderNoise())
        .map(background -> background.fit().residuals());
  }

  /** Whether any pulse east or north was sent in the run. */
  public boolean pushedOneWay() {
    return ends(run.motion().pushedOneWayArcsec());
  }

  /** Whether any pulse west or south was sent in the run. */
  public boolean pushedOtherWay() {
    return ends(run.motion().pushedOtherWayArcsec());
  }

  private static boolean ends(double[] pushed) {
    return pushed.length > 0 && pushed[pushed.length - 1] != pushed[0];
  }
}
