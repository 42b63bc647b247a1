/**
 * The night as the log tells it: immutable values that every other package shares.
 *
 * <p><b>Units and signs.</b> Offsets are star minus set point in great-circle arcseconds on the
 * sky, positive east and north (a right-ascension offset is already multiplied by the cosine of the
 * declination). Pulses are milliseconds, positive when the mount is pushed east or north, which
 * makes the measured offset fall. A row's pulse answers that row's offset: it starts when that
 * frame's exposure ends. Times are seconds since the run's start and mark the middle of the guide
 * exposure. Hour angles are hours, west positive. These are sky directions on both sides of the
 * pier.
 *
 * <p><b>Missing data.</b> A setting that the log does not give is an empty {@code Optional}. Only
 * inside the columns of {@link io.github.roundstar.model.Frames} does NaN say "not measured".
 *
 * <p><b>Neighbours.</b> Imports nothing of ours. Start at {@link io.github.roundstar.model.Night}.
 */
package io.github.roundstar.model;
