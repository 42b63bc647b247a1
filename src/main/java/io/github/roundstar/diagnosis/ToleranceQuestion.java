package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Equipment;
import java.util.OptionalDouble;

/**
 * What optics demand of a mount: the question.
 *
 * @param equipment optics, exposure, seeing and limits
 * @param imagingApertureMillimetres free aperture of the main telescope [mm]
 * @param declinationDegrees of the field; the equator asks most of the axis in right ascension,
 *     high declinations of the polar axis [deg]
 * @param otherShare RMS of the better axis over that of the worse [0 to 1]
 * @param periodicArcsec half of peak to peak of the periodic error at the axis [arcsec]
 * @param periodSeconds its period [s]
 */
public record ToleranceQuestion(
    Equipment equipment,
    OptionalDouble imagingApertureMillimetres,
    OptionalDouble declinationDegrees,
    OptionalDouble otherShare,
    OptionalDouble periodicArcsec,
    OptionalDouble periodSeconds) {}
