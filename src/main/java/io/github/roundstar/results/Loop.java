package io.github.roundstar.results;

/**
 * How the guide loop behaved.
 *
 * @param ra right ascension
 * @param dec declination
 */
public record Loop(AxisLoopResult ra, AxisLoopResult dec) {}
