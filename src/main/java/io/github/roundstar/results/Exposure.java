package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * One exposure of the main camera.
 *
 * @param file file name
 * @param startUtc start by the guide log's clock, ISO 8601
 * @param seconds duration [s]
 * @param coverage share of it that the guide log covers
 * @param predictedElongation from the log
 * @param predictedAngleDeg from the log [deg]
 * @param measuredElongation from the image
 * @param measuredFwhmArcsec from the image [arcsec]
 * @param measuredAngleDeg from the image [deg]
 * @param shiftEastArcsec since the exposure before [arcsec]
 * @param shiftNorthArcsec since the exposure before [arcsec]
 * @param verdict round, borderline, trailed or not covered
 * @param cause why it trailed
 * @param predictedMajorFwhmArcsec width along the long axis, from the log [arcsec]
 * @param predictedMinorFwhmArcsec width across it [arcsec]
 * @param predictedSensorAngleDeg long axis on the sensor, from +x towards +y [deg]
 * @param measuredPattern how the measured shapes change over the field: none, uniform, rotation,
 *     radial or one-sided
 * @param evidence why the verdict has this cause, in words
 * @param predictedCornerElongation from the log and the turn of the field, in the worst corner
 * @param measuredCornerElongation from the image, in the worst corner
 */
public record Exposure(
    String file,
    String startUtc,
    double seconds,
    double coverage,
    Estimate predictedElongation,
    Double predictedAngleDeg,
    Estimate measuredElongation,
    Double measuredFwhmArcsec,
    Double measuredAngleDeg,
    Double shiftEastArcsec,
    Double shiftNorthArcsec,
    String verdict,
    String cause,
    Double predictedMajorFwhmArcsec,
    Double predictedMinorFwhmArcsec,
    Double predictedSensorAngleDeg,
    String measuredPattern,
    String evidence,
    Estimate predictedCornerElongation,
    Estimate measuredCornerElongation) {}
