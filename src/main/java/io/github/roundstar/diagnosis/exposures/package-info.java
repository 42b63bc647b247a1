/**
 * Ties each exposure of the main camera to what the guide log says happened during it: {@code
 * CameraClock} compares the clocks, {@code StarTrack} and {@code WindowMotion} give the motion
 * during an exposure, {@code PredictedShape} the star image that follows, {@code MeasuredShape} the
 * one that was seen, {@code Flexure} how the two cameras move apart, {@code LogCause} and {@code
 * ImageCause} the rules for what trailed it.
 *
 * <p><b>Units.</b> arcsec on the sky, east and north positive, position angles north through east.
 *
 * <p><b>Missing data.</b> A figure that cannot be had is an empty {@code Optional}, then null in
 * the result; an exposure of which the log covers less than 90 % is {@code not covered}.
 *
 * <p><b>Neighbours.</b> Imports {@code motion}, {@code stars}, {@code sky}, {@code signal}, {@code
 * results} and {@code model}. Start at {@link
 * io.github.roundstar.diagnosis.exposures.ExposureStudy}.
 */
package io.github.roundstar.diagnosis.exposures;
