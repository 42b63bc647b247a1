/**
 * One posterior for each axis: what is known of mount, pulses and air once a night's frames have
 * been seen.
 *
 * <p><b>In.</b> Per run ({@link io.github.roundstar.motion.posterior.ObservedRun}): times, offsets
 * with the set point's known shifts added, where the level is lost, columns of what moves steadily
 * (drift, bend, sinusoids), and what pulses would have pushed behind a play of any width.
 * Statements that stand before the data: {@link io.github.roundstar.motion.posterior.Priors}.
 *
 * <p><b>Model.</b> offset = level of the piece + columns + random walk - pushes + noise with a
 * memory. Given four numbers (wander over noise, memory, width of the play, where it stood at
 * first) all others are Gaussian or cost next to nothing; so the posterior is a mixture of
 * Gaussians over a lattice of those four (Rue, Martino &amp; Chopin 2009, J. R. Stat. Soc. B 71,
 * 319). The filter that makes wander and noise white is {@link
 * io.github.roundstar.signal.Whitening}; an unknown level costs the first frame of its piece, which
 * is its exact diffuse start (Durbin &amp; Koopman 2012, section 5.2).
 *
 * <p>An axis that sticks takes the place of one with play ({@link
 * io.github.roundstar.motion.posterior.StickingSearch}): its threshold, start and unlikeness make
 * the density jump, so that they are summed over a fine net, and the lattice keeps wander and
 * memory.
 *
 * <p><b>Out.</b> {@link io.github.roundstar.motion.posterior.AxisPosterior}: every figure with its
 * interval and what was learned, out of one mixture, and joint draws.
 */
package io.github.roundstar.motion.posterior;
