package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * What an axis that sticks withholds before it lets go, at the axis [arcsec].
 *
 * @param dec declination; null unless the axis surely sticks
 */
public record Sticking(Estimate dec) {}
