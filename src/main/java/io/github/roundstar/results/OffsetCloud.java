package io.github.roundstar.results;

/**
 * Where the star was, frame by frame, about each run's mean.
 *
 * @param points east against north [arcsec]; thinned evenly when there are very many
 * @param frames how many frames the cloud stands for
 * @param majorArcsec RMS along the major axis [arcsec]
 * @param minorArcsec RMS along the minor axis [arcsec]
 * @param angleDeg position angle of the major axis, north through east [deg]
 */
public record OffsetCloud(
    Polyline points, int frames, double majorArcsec, double minorArcsec, double angleDeg) {}
