/**
 * Spherical geometry: the turning sky, the horizon, refraction, a polar axis that is not quite
 * where it should be, the field that turns with it, and what optics and air make of a star.
 *
 * <p><b>Units and signs.</b> Degrees, arcminutes, arcseconds and seconds, named; radians stay
 * inside methods. Latitude and declination north positive, longitude east positive, hour angle west
 * positive, azimuth from north through east. Position angles run from north through east. The error
 * of a polar axis is that of its elevated end against the true pole: altitude positive when it
 * points too high, azimuth positive when it points east of the pole, as the angle about the
 * vertical that the azimuth adjuster turns.
 *
 * <p><b>Vectors.</b> (east, north, up) at the site.
 *
 * <p><b>Missing data.</b> None: every function wants finite numbers.
 *
 * <p><b>Neighbours.</b> Imports nothing of ours; vectors and rotations are those of Commons Math.
 * Start at {@link io.github.roundstar.sky.StarPlace}, then {@link
 * io.github.roundstar.sky.PolarAxis}.
 */
package io.github.roundstar.sky;
