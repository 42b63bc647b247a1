package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Where the elevated end of the mount's axis points, relative to the true pole.
 *
 * @param azimuthArcmin east positive, about the vertical [arcmin]
 * @param altitudeArcmin above positive [arcmin]
 * @param totalArcmin on the sky [arcmin]
 * @param altitudeFromRefractedPoleArcmin above the refracted pole [arcmin]
 * @param basis two-pointings, curvature or one-direction
 * @param fieldRotationDegPerHour [deg/h]
 * @param exposureSeconds exposure that the trail is for [s]
 * @param cornerTrailArcsec trail in the corner [arcsec]
 */
public record PolarAxis(
    Estimate azimuthArcmin,
    Estimate altitudeArcmin,
    Estimate totalArcmin,
    Double altitudeFromRefractedPoleArcmin,
    String basis,
    Double fieldRotationDegPerHour,
    Double exposureSeconds,
    Double cornerTrailArcsec) {}
