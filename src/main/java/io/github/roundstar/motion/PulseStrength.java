package io.github.roundstar.motion;

/**
 * How far a second of pulse moves the star, on the sky.
 *
 * @param oneWay pulses east or north [arcsec/s]
 * @param otherWay pulses west or south [arcsec/s]
 * @param uncertainShare standard error of their mean, as a share of it
 */
record PulseStrength(double oneWay, double otherWay, double uncertainShare) {
  /**
   * As the posterior has it.
   *
   * @param declared what a second of pulse moves as declared, on the sky [arcsec/s]
   */
  static PulseStrength of(double declared, AxisMotion motion) {
    return new PulseStrength(
        declared * motion.effect().oneWay(),
        declared * motion.effect().otherWay(),
        motion.known().strengthUncertainShare());
  }

  double mean() {
    return (oneWay + otherWay) / 2;
  }

  /** What a pulse of signed length moves [arcsec]. */
  double moved(double pulseSeconds) {
    return pulseSeconds * (pulseSeconds > 0 ? oneWay : otherWay);
  }
}
