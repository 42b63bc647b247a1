package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Where the elevated end of the mount's axis points, relative to the true pole, and what follows.
 *
 * @param azimuthArcmin east positive, about the vertical, as the adjuster turns [arcmin]; null when
 *     it is not known well enough, as the next two
 * @param altitudeArcmin above positive [arcmin]
 * @param totalArcmin on the sky [arcmin]
 * @param altitudeFromRefractedPoleArcmin above the refracted pole [arcmin]
 * @param basis two-pointings, curvature or one-direction
 * @param fieldRotationDegPerHour fastest turn of the image in the night, north through east [deg/h]
 * @param exposureSeconds exposure that the trail is for [s]
 * @param cornerTrailArcsec longest trail in the corner in one exposure [arcsec]
 * @param longestExposureSeconds exposure with half a pixel of trail in the corner [s]
 * @param cornerDistanceArcmin from the guide star to the corner farthest from it [arcmin]
 * @param known the combination of both errors that is known best
 * @param secondPointingHourAngleHours where another run would settle the rest [h]
 * @param consistent whether an axis in error explains the drifts; null when it cannot be tested
 * @param residualArcsecPerMinute root mean square of what it leaves of the runs' drifts in
 *     declination [arcsec/min]
 * @param beside drift that has to be there beside the axis's; null when there is none or it follows
 *     nothing
 * @param driftAfterArcsecPerMinute largest drift in declination to expect after the axis has been
 *     brought to the true pole, from what is not known of it [arcsec/min]
 * @param trackingRate rate of the axis
 * @param assumed what was assumed of the site; null when its latitude is known
 */
public record PolarAxis(
    Estimate azimuthArcmin,
    Estimate altitudeArcmin,
    Estimate totalArcmin,
    Double altitudeFromRefractedPoleArcmin,
    String basis,
    Double fieldRotationDegPerHour,
    Double exposureSeconds,
    Double cornerTrailArcsec,
    Double longestExposureSeconds,
    Double cornerDistanceArcmin,
    KnownDirection known,
    Double secondPointingHourAngleHours,
    Boolean consistent,
    Double residualArcsecPerMinute,
    BesideAxis beside,
    Double driftAfterArcsecPerMinute,
    TrackingRate trackingRate,
    AssumedSite assumed) {}
