package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Measurement noise: what the air and the centroid add to every frame [arcsec].
 *
 * @param ra right ascension, on the sky
 * @param dec declination
 * @param lag1 autocorrelation of the noise from frame to frame
 * @param raBySecondDifferences the same as {@code ra} by another way, as a check
 * @param decBySecondDifferences the same as {@code dec} by another way, as a check
 */
public record NoiseFloor(
    Estimate ra,
    Estimate dec,
    Double lag1,
    Double raBySecondDifferences,
    Double decBySecondDifferences) {
  /** Without the check. */
  public NoiseFloor(Estimate ra, Estimate dec, Double lag1) {
    this(ra, dec, lag1, null, null);
  }
}
