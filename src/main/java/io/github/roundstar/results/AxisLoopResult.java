package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * How the guide loop of one axis behaved.
 *
 * @param gain share of the offset that one pulse takes away
 * @param deadbandArcsec offsets below this are left alone [arcsec]
 * @param delayFrames frames between offset and pulse
 * @param lag1Autocorrelation of the offsets
 * @param explainedShare share of the pulses' variance that the fitted controller explains
 */
public record AxisLoopResult(
    Estimate gain,
    Double deadbandArcsec,
    Integer delayFrames,
    Double lag1Autocorrelation,
    Double explainedShare) {}
