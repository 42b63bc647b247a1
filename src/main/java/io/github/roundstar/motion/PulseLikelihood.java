package io.github.roundstar.motion;

import io.github.roundstar.signal.NestedRegression;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.Whitening;
import java.util.List;

/**
 * The log likelihood of a run behind lost motion, as a function of what is lost: wander and noise
 * known, drift, bend and strength of pulses fitted. All but the pulses is the same whatever is
 * lost, and goes through the filter once.
 */
final class PulseLikelihood {
  private final PlayProfile profile;
  private final Whitening whitening;
  private final NestedRegression unpushed;

  PulseLikelihood(PlayProfile profile, WanderNoise wanderNoise) {
    this.profile = profile;
    AxisRun run = profile.behind(LostMotion.NONE);
    MotionSeries motion = run.motion();
    whitening = motion.whitening(wanderNoise);
    unpushed =
        new NestedRegression(
            motion.answering(0, 0).white(whitening),
            whitening.apply(ToneColumns.withDrift(run, List.of())));
  }

  /** But for a constant that only the number of samples decides. */
  double at(LostMotion lost) {
    MotionSeries motion = profile.behind(lost).motion();
    double squares =
        unpushed.sumOfSquares(
            whitening.apply(motion.pushedOneWayArcsec()),
            whitening.apply(motion.pushedOtherWayArcsec()));
    return whitening.logLikelihood(squares);
  }
}
