package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Lost motion at a reversal, at the axis [arcsec].
 *
 * @param dec declination
 * @param ra right ascension
 */
public record Backlash(Estimate dec, Estimate ra) {}
