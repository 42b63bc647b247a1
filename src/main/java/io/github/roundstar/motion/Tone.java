package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;

/**
 * One sinusoid of the mount's motion at the axis, A sin(2 pi t / P + phase).
 *
 * @param periodSeconds P [s]
 * @param amplitudeArcsecAxis A, corrected for the exposure's averaging [arcsec]
 * @param phaseRad phase in the first run that takes part, from its first used frame [rad]
 * @param falseAlarm probability that wander and noise alone show so strong a line anywhere in the
 *     range searched
 * @param source {@code worm}, {@code worm/2}, {@code strain-wave}, {@code strain-wave/2}, {@code
 *     gear:NAME} or {@code unlabelled}
 * @param mayBeAlias whether the period is below four cadences
 */
public record Tone(
    Estimate periodSeconds,
    Estimate amplitudeArcsecAxis,
    double phaseRad,
    double falseAlarm,
    String source,
    boolean mayBeAlias) {
  /**
   * Periods below this many cadences may be another period, seen through the gaps between frames.
   */
  static final double ALIAS_CADENCES = 4;
}
