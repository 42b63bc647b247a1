package io.github.roundstar.model;

import java.util.OptionalDouble;

/**
 * Guide settings of one axis, as far as the log tells.
 *
 * @param gain share of the measured offset that one pulse is meant to take away
 * @param deadbandArcsec offsets below this are left alone [arcsec]
 */
public record AxisLoop(OptionalDouble gain, OptionalDouble deadbandArcsec) {
  /** Nothing known. */
  public static final AxisLoop UNKNOWN =
      new AxisLoop(OptionalDouble.empty(), OptionalDouble.empty());
}
