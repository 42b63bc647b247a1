package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Response in right ascension [arcsec/s].
 *
 * @param sky on the sky
 * @param axis at the axis
 * @param east pulses east, at the axis
 * @param west pulses west, at the axis
 * @param declaredAxis declared guide rate, at the axis
 */
public record RaResponse(
    Estimate sky, Estimate axis, Estimate east, Estimate west, Double declaredAxis) {}
