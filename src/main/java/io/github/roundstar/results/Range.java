package io.github.roundstar.results;

/**
 * A figure of a night that was played again, with its 95 % interval over the posterior's draws.
 *
 * @param value median of the draws
 * @param low lower end
 * @param high upper end
 */
public record Range(double value, double low, double high) {}
