package io.github.roundstar.results;

/**
 * What another setting would have done.
 *
 * @param axis ra or dec
 * @param gain share of the offset per pulse
 * @param deadbandArcsec offsets left alone [arcsec]
 * @param cadenceSeconds time between frames [s]
 * @param predictedLoggedRmsArcsec RMS the log would show [arcsec]
 * @param predictedMotionRmsArcsec RMS of the star's motion [arcsec]
 */
public record Replay(
    String axis,
    double gain,
    double deadbandArcsec,
    double cadenceSeconds,
    double predictedLoggedRmsArcsec,
    double predictedMotionRmsArcsec) {}
