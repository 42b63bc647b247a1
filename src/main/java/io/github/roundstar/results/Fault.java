package io.github.roundstar.results;

/**
 * A part of a night that is missing by a fault of the tool itself.
 *
 * @param part figure, chart or section
 * @param what the fault and where in the tool it happened
 */
public record Fault(String part, String what) {}
