package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import java.util.Optional;

/**
 * How far a second of pulse moves the star, on the sky.
 *
 * @param oneWay pulses east or north [arcsec/s]
 * @param otherWay pulses west or south [arcsec/s]
 * @param uncertainShare standard error of their mean, as a share of it
 */
record PulseStrength(double oneWay, double otherWay, double uncertainShare) {
  /** As a shared fit of one run takes it: declared, times what was measured, times the excess. */
  static PulseStrength of(double declared, SharedFit fit, Optional<Response> response) {
    boolean measured = fit.model().backgrounds().get(0).run().responseMeasured();
    Optional<Response> taken = response.filter(r -> measured);
    return new PulseStrength(
        declared
            * taken.flatMap(Response::oneWay).map(Estimate::value).orElse(1.0)
            * (1 + excess(fit, 0)),
        declared
            * taken.flatMap(Response::otherWay).map(Estimate::value).orElse(1.0)
            * (1 + excess(fit, 1)),
        uncertainShare(fit));
  }

  private static double uncertainShare(SharedFit fit) {
    int one = fit.layout().excess(fit.layout().slot(0), 0);
    int other = fit.layout().excess(fit.layout().slot(0), 1);
    Covariance covariance = fit.covariance();
    return Math.sqrt(
            covariance.at(one, one) + covariance.at(other, other) + 2 * covariance.at(one, other))
        / 2;
  }

  /** The excess response of the only run of a fit. */
  static double excess(SharedFit fit, int direction) {
    return fit.parameter(fit.layout().excess(fit.layout().slot(0), direction));
  }

  double mean() {
    return (oneWay + otherWay) / 2;
  }

  /** What a pulse of signed length moves [arcsec]. */
  double moved(double pulseSeconds) {
    return pulseSeconds * (pulseSeconds > 0 ? oneWay : otherWay);
  }
}
