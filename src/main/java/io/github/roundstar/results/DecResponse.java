package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Response in declination [arcsec/s].
 *
 * @param axis both ways
 * @param north pulses north
 * @param south pulses south
 * @param declaredAxis declared guide rate
 */
public record DecResponse(Estimate axis, Estimate north, Estimate south, Double declaredAxis) {}
