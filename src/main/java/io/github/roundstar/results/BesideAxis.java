package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * A drift in declination that no polar axis makes.
 *
 * @param follows {@code pier-side}: its sign changes with the side, plus for a tube west of the
 *     pier; {@code nothing}: it is the same in all runs
 * @param arcsecPerMinute north positive [arcsec/min]
 */
public record BesideAxis(String follows, Estimate arcsecPerMinute) {}
