package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * What another setting would have done.
 *
 * @param axis ra or dec
 * @param gain share of the offset per pulse
 * @param deadbandArcsec offsets left alone [arcsec]
 * @param cadenceSeconds time between pulses; the frames in between are averaged [s]
 * @param predictedLoggedRmsArcsec RMS the log would show [arcsec]
 * @param predictedMotionRmsArcsec RMS of the star's motion, within each exposure where round stars
 *     are asked for, else about the mean of each run [arcsec]
 * @param trained whether the periodic error is trained out beforehand
 * @param current whether the log was made with this setting
 * @param best whether this is the setting to take, trained alike: none is expected to lose fewer
 *     exposures by more than a trifle, and it is the nearest to the one in use
 * @param lessMotionArcsec how much less the star would have moved than with the current setting, as
 *     a difference of RMS [arcsec]
 */
public record Replay(
    String axis,
    double gain,
    double deadbandArcsec,
    double cadenceSeconds,
    double predictedLoggedRmsArcsec,
    double predictedMotionRmsArcsec,
    boolean trained,
    boolean current,
    boolean best,
    Estimate lessMotionArcsec) {}
