/**
 * Physically honest guided nights with known truth, for judging the estimators and for examples.
 *
 * <p><b>What is played.</b> A mount with an eccentric worm, play, stiction, wander and wrong pulse
 * strengths turns about an axis beside the pole; air moves and lifts the star; a loop measures it
 * and pushes. Everything is a mean over the guide exposure in closed form: nothing is stepped. A
 * pulse starts when the exposure it answers ends; what runs into the next exposure counts by time.
 *
 * <p><b>Units and signs.</b> Those of {@code model}. Worm and gears are given at the axis and
 * shrink with the cosine of the declination; play lives in the motor's frame, which is turned for a
 * tube east of the pier. A sum of shifts of the set point is taken off the offset: offset = motion
 * - correction - set point + error.
 *
 * <p><b>Missing data.</b> A frame under a thick cloud is lost: its offsets are NaN, its truth is
 * kept.
 *
 * <p><b>Neighbours.</b> Uses {@code formats}, {@code sky} and {@code model}, never an estimator of
 * {@code signal} or {@code motion}, which it is there to judge. Start at {@link
 * io.github.roundstar.simulate.Simulation}, then {@code RunSimulator}.
 */
package io.github.roundstar.simulate;
