package io.github.roundstar.model;

/**
 * A remark in the log.
 *
 * @param timeSeconds seconds since the run's start
 * @param text the remark as logged, at most 200 characters
 */
public record Note(double timeSeconds, String text) {}
