package io.github.roundstar.results;

/**
 * The smallest sinusoid that stands out: wander and noise alone reach this amplitude anywhere in
 * the range searched in one night of a hundred.
 *
 * @param periodSeconds the worm's period; where that is unknown, the period at which the most is
 *     needed, of those that turn at least three times [s]
 * @param amplitudeArcsecAxis half of peak to peak [arcsec at the axis]
 */
public record Detectable(double periodSeconds, double amplitudeArcsecAxis) {}
