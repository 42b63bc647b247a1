package io.github.roundstar.results;

/**
 * Something that happened.
 *
 * @param time seconds since the run's start
 * @param kind what it was
 * @param sizeArcsec how far the star went [arcsec]
 */
public record Event(double time, String kind, Double sizeArcsec) {}
