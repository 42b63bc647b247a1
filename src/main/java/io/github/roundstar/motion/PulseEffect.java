package io.github.roundstar.motion;

/**
 * What the pulses of one axis of a run do.
 *
 * @param oneWay strength of pulses east or north [declared]
 * @param otherWay strength of pulses west or south [declared]
 * @param delaySeconds how long they wait after the exposure that asked for them [s]
 * @param lost what they lose on the way, in pushes of the declared strength
 */
record PulseEffect(double oneWay, double otherWay, double delaySeconds, LostMotion lost) {
  /** Every pulse acts at once and as declared, and nothing is lost. */
  static final PulseEffect DECLARED = new PulseEffect(1, 1, 0, LostMotion.NONE);

  /** Mean strength of both directions [declared]. */
  double strength() {
    return (oneWay + otherWay) / 2;
  }
}
