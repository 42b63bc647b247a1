/**
 * Numbers in, numbers out: regression, scatter, spectra and what chance alone would show.
 *
 * <p><b>Units.</b> Times are seconds and frequencies hertz; values keep the unit they came in. No
 * class here knows what a value means, save that an ellipse has an east and a north.
 *
 * <p><b>Missing data.</b> A gap is a missing sample, not a NaN: every input must be finite. A
 * figure that cannot be had is an empty {@code Optional}. Nothing interpolates but {@link
 * io.github.roundstar.signal.EvenResampling}.
 *
 * <p><b>Arrays.</b> Copied in and copied out; no method writes to an argument.
 *
 * <p><b>Neighbours.</b> Imports {@code model} for its {@code Estimate} only. Start at {@link
 * io.github.roundstar.signal.Series}, then {@link io.github.roundstar.signal.LeastSquares} and
 * {@link io.github.roundstar.signal.Periodogram}.
 */
package io.github.roundstar.signal;
