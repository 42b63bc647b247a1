package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * How the guide loop of one axis behaved.
 *
 * @param gain share of a lasting offset that one pulse takes away
 * @param deadbandArcsec offsets below this are left alone [arcsec]
 * @param delayFrames frames between offset and pulse
 * @param lag1Autocorrelation of the offsets
 * @param explainedShare share of the pulses' variance that the fitted controller explains
 * @param memory share of the answered offset that comes from the frames before
 * @param pulseLimitMillis longest pulse, where pulses met a limit [ms]
 * @param shortestPulseMillis shortest pulse that was sent [ms]
 * @param declaredGain gain that the log declares
 * @param declaredDeadbandArcsec deadband that the log declares [arcsec]
 * @param noiseAmplification mean square of the star's motion that the loop makes out of measurement
 *     noise, over the noise's: gain / (2 - gain)
 */
public record AxisLoopResult(
    Estimate gain,
    Double deadbandArcsec,
    Integer delayFrames,
    Double lag1Autocorrelation,
    Double explainedShare,
    Double memory,
    Double pulseLimitMillis,
    Double shortestPulseMillis,
    Double declaredGain,
    Double declaredDeadbandArcsec,
    Double noiseAmplification) {}
