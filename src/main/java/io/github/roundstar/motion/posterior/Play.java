package io.github.roundstar.motion.posterior;

/**
 * A play that pulses may pass, or a threshold of an axis that sticks.
 *
 * @param width what a full reversal loses, or what the motor must be ahead by [arcsec of declared
 *     pushes]
 * @param start where the motor stands at first, as in {@link Pushes}
 * @param unlikeness as in {@link Pushes}
 * @param unlikeCell how wide a range of unlikeness this one stands for; 0 where pushes are linear
 *     in it, so that one stands for all
 */
record Play(double width, double start, double unlikeness, double unlikeCell) {
  /** Pulses act as sent. */
  static final Play NONE = new Play(0, 0.5, 0);

  Play(double width, double start, double unlikeness) {
    this(width, start, unlikeness, 0);
  }
}
