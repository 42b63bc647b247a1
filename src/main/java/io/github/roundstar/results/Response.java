package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * What a second of pulse moves [arcsec/s].
 *
 * @param ra right ascension
 * @param dec declination
 * @param crossAxisDeg angle between a pulse in right ascension and the star's motion [deg]
 */
public record Response(RaResponse ra, DecResponse dec, Estimate crossAxisDeg) {}
