package io.github.roundstar.motion.posterior;

/**
 * A play that pulses may pass.
 *
 * @param width what a full reversal loses, in declared pushes [arcsec]
 * @param start share of it that a first push east or north would lose, 0 to 1
 * @param unlikeness as in {@link Pushes}
 */
record Play(double width, double start, double unlikeness) {
  /** Pulses act as sent. */
  static final Play NONE = new Play(0, 0.5, 0);
}
