package io.github.roundstar.results;

import io.github.roundstar.model.Estimate;

/**
 * Motion of the mount in one run with the corrections taken out.
 *
 * @param run number of the run
 * @param motion decimated [s since the night's first frame; arcsec]
 * @param drift the fitted drift line, drawn through the motion
 * @param driftArcsecPerMinute its slope; null when it could not be had
 */
public record MotionTrace(
    int run, Polyline motion, Polyline drift, Estimate driftArcsecPerMinute) {}
