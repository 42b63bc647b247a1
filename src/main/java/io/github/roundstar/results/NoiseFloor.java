package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Measurement noise: what the air and the centroid add to every frame [arcsec].
 *
 * @param ra right ascension, on the sky
 * @param dec declination
 * @param lag1 autocorrelation of the noise from frame to frame
 */
public record NoiseFloor(Estimate ra, Estimate dec, Double lag1) {}
