package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Drift of the mount in both axes, on the sky [arcsec/min].
 *
 * @param ra east positive
 * @param dec north positive
 */
public record AxisDrift(Estimate ra, Estimate dec) {}
