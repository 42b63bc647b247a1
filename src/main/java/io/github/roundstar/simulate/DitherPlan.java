package io.github.roundstar.simulate;

/**
 * Wanted moves of the set point.
 *
 * @param everyMinutes time between them [min]
 * @param sizeArcsec largest shift per axis; single ones are spread evenly up to it [arcsec]
 * @param logsShift whether the log tells the shift
 * @param logsSettling whether the log marks the settling
 * @param settleArcsec settled when the radial offset stays below this [arcsec]
 * @param settleFrames for so many frames
 * @param settleLimitSeconds or after this time [s]
 */
public record DitherPlan(
    double everyMinutes,
    double sizeArcsec,
    boolean logsShift,
    boolean logsSettling,
    double settleArcsec,
    int settleFrames,
    double settleLimitSeconds) {}
