package io.github.roundstar.results;

/**
 * What was assumed of a site whose latitude nobody told.
 *
 * @param latitudeFromDeg southern end of the latitudes from which every star stood high enough
 *     [deg]; null when it is not to be told, as the next
 * @param latitudeToDeg their northern end [deg]
 * @param axisEnd which end of the axis the known combination of errors is that of: raised, or north
 *     where the stars do not tell the hemisphere
 */
public record AssumedSite(Double latitudeFromDeg, Double latitudeToDeg, String axisEnd) {}
