/**
 * What the star did and what the mount did, out of the frames of a run: scatter of the guided star,
 * motion of the mount with the corrections taken out, drift, periodic error, settling; how the loop
 * answered, what each cause leaves in the offsets, and what other settings would have done.
 *
 * <p><b>Units.</b> Seconds since the run's start, arcseconds, east and north positive. Names end in
 * {@code Sky} or {@code Axis} where the two differ: right ascension at the axis is the motion on
 * the sky divided by the cosine of the declination; declination is the same in both.
 *
 * <p><b>Missing data.</b> A figure that cannot be had is an {@link
 * io.github.roundstar.motion.Answer} without a value but with a reason that a person can act on.
 *
 * <p><b>Levels.</b> A run falls into pieces where its level is lost: a dither of unknown size, a
 * re-acquired star, a long gap ({@link io.github.roundstar.motion.Pieces}). Every fit lets each
 * piece have its own level.
 *
 * <p><b>Neighbours.</b> Imports {@code model}, {@code signal} and {@code sky}. Start at {@link
 * io.github.roundstar.motion.Reconstruction} and {@link io.github.roundstar.motion.PeriodicError};
 * for the loop at {@link io.github.roundstar.motion.LoopFit} and {@link
 * io.github.roundstar.motion.MotionSplit}.
 */
package io.github.roundstar.motion;
