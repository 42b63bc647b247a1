package io.github.roundstar.results;

/**
 * Time lost after dithers.
 *
 * @param dithers how many
 * @param medianSeconds median time to settle [s]; null without dithers
 * @param p90Seconds 90 % quantile of it [s]
 * @param hoursLost sum [h]
 */
public record Settling(int dithers, Double medianSeconds, Double p90Seconds, double hoursLost) {}
