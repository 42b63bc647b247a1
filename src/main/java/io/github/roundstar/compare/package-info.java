/**
 * Whether nights differ: before and after a change, and along a season.
 *
 * <p>{@link io.github.roundstar.compare.Comparison} takes two sets of nights and fills {@code
 * results.CompareResult}; {@link io.github.roundstar.compare.Season} takes all nights in order of
 * time and the dates of work on the mount. {@code MountFigures}, {@code ComponentFigures}, {@code
 * DriftFigures} and {@code GuidingFigures} are the one place that says which figures are compared,
 * what better means, which change is none in practice and how far nights differ by themselves.
 *
 * <p><b>Statistics.</b> A night counts as one value; frames never do. {@code NightSample} gives its
 * variance, {@code ChangeTest} the difference, {@code Judge} the word for it.
 *
 * <p><b>Missing data.</b> A figure that a night lacks is a {@code Reading} with a reason.
 *
 * <p><b>Neighbours.</b> Imports results, signal and model; works on finished results only, so that
 * a log and its JSON compare alike.
 */
package io.github.roundstar.compare;
