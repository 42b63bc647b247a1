package io.github.roundstar.results;

/**
 * Something that happened.
 *
 * @param time seconds since the run's start
 * @param kind what it was: dither, lost, flip as the log tells; gust, knock, lasting-shift,
 *     star-switch, cloud, stuck-star as the star shows
 * @param sizeArcsec how far the star went [arcsec]
 * @param endTime seconds since the run's start; the same as {@code time} for a moment
 * @param lightLost largest share of the star's light that a cloud took, 0 to 1
 */
public record Event(
    double time, String kind, Double sizeArcsec, double endTime, Double lightLost) {}
