/**
 * What the numbers mean: brings the figures of motion together into a night's result and into what
 * its charts show.
 *
 * <p><b>Units.</b> As in the names; see {@code results}.
 *
 * <p><b>Missing data.</b> A figure that cannot be had becomes null in the result, and its reason
 * goes to the list of figures not computed ({@link io.github.roundstar.diagnosis.Reasons}).
 *
 * <p><b>Neighbours.</b> Imports {@code motion}, {@code signal}, {@code model} and {@code results}.
 * Start at {@link io.github.roundstar.diagnosis.NightAnalysis}.
 */
package io.github.roundstar.diagnosis;
