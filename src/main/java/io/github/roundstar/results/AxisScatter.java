package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Offsets of one axis.
 *
 * @param rmsArcsec about the run's own mean, divisor n [arcsec]
 * @param meanArcsec mean offset from the set point [arcsec]; null where the log does not tell its
 *     directions
 * @param peakArcsec largest distance from the mean [arcsec]
 * @param p95Arcsec 95 % quantile (type 7) of the distance from the mean [arcsec]
 * @param driftArcsecPerMinute slope of the offsets while guided [arcsec/min]; null over a night and
 *     for fewer than 3 frames
 */
public record AxisScatter(
    double rmsArcsec,
    Double meanArcsec,
    double peakArcsec,
    double p95Arcsec,
    Estimate driftArcsecPerMinute) {}
