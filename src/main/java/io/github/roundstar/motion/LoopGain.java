package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.Optional;

/** The gain a loop really has: what its pulses take away of a lasting offset. */
public final class LoopGain {
  private LoopGain() {}

  /**
   * Share of a lasting offset that one pulse takes away, by what a second of pulse was measured to
   * move; by the declared rate, give or take what that is allowed to be off, where the pulses do
   * not tell. The law itself adds nothing to the interval: it is read off the pulses.
   *
   * @param declaredSky declared speed of a pulse on the sky [arcsec/s]
   */
  public static Answer<Estimate> of(
      LoopFit fit, Answer<Double> declaredSky, Optional<Response> response) {
    Estimate strength =
        response
            .filter(Response::informative)
            .flatMap(Response::both)
            .orElse(Estimate.symmetric(1, Estimate.SIGMAS_95 * ToneModel.EXCESS_SHARE));
    return declaredSky.map(rate -> strength.times(fit.law().millisPerArcsec() / 1000 * rate));
  }
}
