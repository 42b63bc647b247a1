package io.github.roundstar.results;

/**
 * One part of the mean square.
 *
 * @param cause what causes it
 * @param meanSquareArcsec2 its mean square [arcsec^2]
 * @param shareOfTrailing its share of the axis's mean square after each exposure's mean is removed;
 *     negative where it works against the others, which may then exceed 1; all of an axis add up to
 *     1
 */
public record BudgetPart(String cause, double meanSquareArcsec2, double shareOfTrailing) {}
