package io.github.roundstar.results;

import java.util.Objects;

/**
 * How the star moved about its mean place while it was guided; used frames only.
 *
 * @param ra east-west, on the sky
 * @param dec north-south
 * @param rmsRadialArcsec root of the summed squares of both axes' RMS [arcsec]
 * @param p95RadiusArcsec 95 % of the frames lie within this of the mean place [arcsec]
 * @param scatterElongation major over minor axis of the offsets' covariance, seeing not included;
 *     null when the minor axis is zero
 * @param positionAngleDeg angle of the major axis, north through east, [0, 180) [deg]; null when
 *     the elongation is not significant
 * @param rmsRadialImagingPixels radial RMS in pixels of the main camera; null when its scale is
 *     unknown
 */
public record Guided(
    AxisScatter ra,
    AxisScatter dec,
    double rmsRadialArcsec,
    double p95RadiusArcsec,
    Double scatterElongation,
    Double positionAngleDeg,
    Double rmsRadialImagingPixels) {
  /** Checks that both axes are there. */
  public Guided {
    Objects.requireNonNull(ra, "ra");
    Objects.requireNonNull(dec, "dec");
  }
}
