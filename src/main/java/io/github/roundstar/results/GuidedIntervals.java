package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * How well one night knows its own scatter: intervals from a moving-block bootstrap over the used
 * frames, so that frames that follow each other are not taken as independent.
 *
 * @param raRmsArcsec RMS east-west [arcsec]
 * @param decRmsArcsec RMS north-south [arcsec]
 * @param rmsRadialArcsec radial RMS [arcsec]
 * @param scatterElongation major over minor axis of the offsets; null when that has no extent
 */
public record GuidedIntervals(
    Estimate raRmsArcsec,
    Estimate decRmsArcsec,
    Estimate rmsRadialArcsec,
    Estimate scatterElongation) {}
