package io.github.roundstar.results;

/**
 * One part of the mean square.
 *
 * @param cause what causes it
 * @param meanSquareArcsec2 its mean square [arcsec^2]
 * @param shareOfTrailing its share after each exposure's mean is removed
 */
public record BudgetPart(String cause, double meanSquareArcsec2, double shareOfTrailing) {}
