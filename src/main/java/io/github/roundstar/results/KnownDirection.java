package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * The combination of both errors of a polar axis that is known best, on the sky.
 *
 * @param arcmin {@code eastShare} times the error to the east plus {@code highShare} times that
 *     above the pole [arcmin]
 * @param eastShare -1 to 1
 * @param highShare 0 to 1; the squares of both shares add up to 1
 */
public record KnownDirection(Estimate arcmin, double eastShare, double highShare) {}
