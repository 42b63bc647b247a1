/**
 * Other worlds: a second simulator, whose truth the tool's estimators are judged by. It shares no
 * code, seeds or priors with them or with {@code simulate}, and its writer had read neither; it
 * knows only the guide table's and the equipment file's form.
 *
 * <p>Start with {@link io.github.roundstar.worlds.World}: {@code World.PLAY.night(7)} draws a night
 * and plays it in some 30 ms. The {@link io.github.roundstar.worlds.WorldNight} gives the guide
 * table (all digits, or rounded as a logger would), the equipment file, the {@link
 * io.github.roundstar.worlds.Truth}, the guide star's true place row for row ({@link
 * io.github.roundstar.worlds.StarTruth}), the main camera's {@link
 * io.github.roundstar.worlds.ImageMotion} with its exposures, and the same night again with other
 * settings or a mended mount ({@link io.github.roundstar.worlds.Cure}).
 *
 * <p>How it works. {@code NightPlan} draws everything that was convenient, the world bends it, and
 * {@code settle} works out what hangs on it. {@code Playthrough} first lays out, run by run on a
 * grid of 0.05 s (0.025 s for cadences under 1 s), what moves the star without pulses: {@code
 * SkyPath} (polar axis and refraction by rotation of vectors), gears whose angle is the axis' own
 * and so goes on over a slew, wander, gusts, bending, air. Then it exposes frame after frame,
 * averages the place over the exposure, lets {@code Controller} answer, and turns the motors while
 * their pulses last; {@code DecGear} stands between motor and declination axis. Every cause has a
 * random stream of its own ({@code Streams}), so that a cure changes nothing else.
 *
 * <p>Units and signs. Arcsec, s, ms, deg; names say which. Offsets are star minus set point,
 * positive east and north, on the sky; "axis" is the sky's right ascension divided by cos
 * (declination). A positive pulse pushes the mount east or north and makes the offset fall; it
 * belongs to the row whose offset it answers, and acts after that row's exposure. Polar axis by its
 * elevated end: azimuth positive east as the angle about the vertical, altitude positive above the
 * true pole. Times are seconds since the start of the log.
 *
 * <p>What it leaves out: turning of the field about the guide star, play in right ascension, motors
 * that take time to speed up, a wrong pixel scale, a star that drifts through a zenith's blind
 * spot. Its gains are held below what would swing by itself, and pulse limits above what the
 * drive's own error asks for: no owner would guide on through either.
 */
package io.github.roundstar.worlds;
