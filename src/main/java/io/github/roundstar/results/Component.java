package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;
import java.util.Objects;

/**
 * One sinusoid A sin(2 pi t / P + phase) of the mount's motion, t from the run's first used frame,
 * east positive.
 *
 * @param periodSeconds P [s]
 * @param amplitudeArcsecAxis A, half of peak to peak, corrected for the exposure's averaging
 *     [arcsec at the axis]
 * @param phaseRad phase in the night's first run [rad]
 * @param falseAlarm probability that wander and noise alone show so strong a peak anywhere in the
 *     range searched
 * @param source worm, worm/2, strain-wave, strain-wave/2, gear:NAME or unlabelled
 * @param mayBeAlias period below four cadences
 */
public record Component(
    Estimate periodSeconds,
    Estimate amplitudeArcsecAxis,
    Double phaseRad,
    double falseAlarm,
    String source,
    boolean mayBeAlias) {
  /** Checks what every sinusoid has. */
  public Component {
    Objects.requireNonNull(periodSeconds, "periodSeconds");
    Objects.requireNonNull(amplitudeArcsecAxis, "amplitudeArcsecAxis");
    Objects.requireNonNull(source, "source");
  }
}
