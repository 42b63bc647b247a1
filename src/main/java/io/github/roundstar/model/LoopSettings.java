package io.github.roundstar.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Settings of the guide loop, as far as the log tells.
 *
 * @param guideRateSidereal speed of a pulse as a multiple of the sidereal rate
 * @param ra right ascension
 * @param dec declination
 * @param pulseLimitMillis longest pulse that is sent [ms]
 * @param decDirection ways the loop may push in declination
 */
public record LoopSettings(
    OptionalDouble guideRateSidereal,
    AxisLoop ra,
    AxisLoop dec,
    OptionalDouble pulseLimitMillis,
    Optional<DecDirection> decDirection) {
  /** Nothing known. */
  public static final LoopSettings UNKNOWN =
      new LoopSettings(
          OptionalDouble.empty(),
          AxisLoop.UNKNOWN,
          AxisLoop.UNKNOWN,
          OptionalDouble.empty(),
          Optional.empty());
}
