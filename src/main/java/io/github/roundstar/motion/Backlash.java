package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.WanderNoise;
import java.util.List;
import java.util.Optional;

/**
 * Lost motion at a reversal: the pulses go through a play of unknown width, with everything else in
 * the model - drift, bend, strength of pulses, wander, noise - fitted anew. The flank that the
 * gears rest on at first is unknown too.
 *
 * @param declaredArcsec width of the play as pulses of the declared strength lose it, with its 95 %
 *     interval, which is that of the play in arcseconds over their strength: it holds what is not
 *     known of the strength. It holds zero when there may be no play
 * @param slack share of the play that a first push north would have lost, 0 to 1
 * @param run motion behind the play of that width; where both directions are unlike, what each of
 *     them pushed holds what that does inside the play ({@link TiedPulses#motion})
 * @param beside what else of the play is not known and would change the motion, at its samples: for
 *     the response to be told beside it; nothing where there may be no play
 * @param wanderNoise wander and noise that the likelihood has there
 * @param unlikeness how much more than the mean of both directions a push north moves the motor, as
 *     a share; 0 where there may be no play
 */
public record Backlash(
    Estimate declaredArcsec,
    double slack,
    AxisRun run,
    List<double[]> beside,
    WanderNoise wanderNoise,
    double unlikeness) {
  /**
   * Profiles the width.
   *
   * @param reconstruction what the motion is made of
   * @param plain the run as if there were no play
   * @return nothing when there are no pulses, too few frames, or the star never moved
   */
  static Optional<Backlash> of(Reconstruction reconstruction, AxisRun plain) {
    MotionSeries motion = plain.motion();
    double[][] columns = ResponseModel.of(plain, List.of()).columns();
    boolean enough = motion.size() - motion.pieces() >= RunBackground.FEWEST_STEPS + columns.length;
    if (!reconstruction.pushed() || !enough) {
      return Optional.empty();
    }
    return motion
        .wanderNoise(columns)
        .map(start -> new PlayProfile(reconstruction, plain).search(start));
  }

  /** The play, at the declared rate. */
  LostMotion lost() {
    return LostMotion.play(declaredArcsec.value(), slack, unlikeness);
  }

  /** Profiles once more with what was found behind this play. */
  Backlash again(PlayProfile profile) {
    return profile.search(wanderNoise.white());
  }

  /**
   * Width of the play [arcsec at the axis]: the declared one times the strength that pulses were
   * found to have behind it.
   */
  public Optional<Estimate> arcsec(Response response) {
    return response.both().map(strength -> declaredArcsec.times(strength.value()));
  }
}
