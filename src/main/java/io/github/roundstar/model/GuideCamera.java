package io.github.roundstar.model;

import java.util.OptionalDouble;

/**
 * The guide camera, as far as the log tells.
 *
 * @param scaleArcsecPerPixel arcseconds on the sky per logged pixel
 * @param exposureSeconds exposure of one guide frame [s]
 */
public record GuideCamera(OptionalDouble scaleArcsecPerPixel, OptionalDouble exposureSeconds) {
  /** Nothing known. */
  public static final GuideCamera UNKNOWN =
      new GuideCamera(OptionalDouble.empty(), OptionalDouble.empty());
}
