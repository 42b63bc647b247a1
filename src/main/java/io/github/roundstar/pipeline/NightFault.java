package io.github.roundstar.pipeline;

/**
 * A night that a fault of the tool stopped; the others went on.
 *
 * @param night its name
 * @param cause the fault
 */
public record NightFault(String night, RuntimeException cause) {}
