package io.github.roundstar.ingest.layout;

import io.github.roundstar.model.PierSide;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the camera lies on the sky.
 *
 * @param raDegrees direction in which positive right ascension points on the camera, from X through
 *     Y [deg]
 * @param decDegrees the same of declination [deg]
 * @param pierSide the side of the pier for which directions that turn with it are given
 */
public record CameraAxes(
    OptionalDouble raDegrees, OptionalDouble decDegrees, Optional<PierSide> pierSide) {}
