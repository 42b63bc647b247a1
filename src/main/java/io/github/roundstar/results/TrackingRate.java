package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Rate of the right-ascension axis, refraction and polar axis taken out.
 *
 * @param errorArcsecPerMinuteAxis against the sidereal rate; plus when the mount runs ahead of the
 *     stars [arcsec/min]
 * @param kingArcsecPerMinuteAxis the refraction-slowed rate of this night's stars, against the
 *     sidereal rate [arcsec/min]
 */
public record TrackingRate(Estimate errorArcsecPerMinuteAxis, double kingArcsecPerMinuteAxis) {}
