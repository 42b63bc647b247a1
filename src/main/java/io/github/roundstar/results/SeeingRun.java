package io.github.roundstar.results;

/**
 * The air of one run.
 *
 * @param run number of the run
 * @param airmass to one decimal, in the middle of the run; null when not known
 * @param leastFwhmArcsec as for the night [arcsec]
 * @param mostFwhmArcsec as for the night [arcsec]
 */
public record SeeingRun(int run, Double airmass, double leastFwhmArcsec, double mostFwhmArcsec) {}
