package io.github.roundstar.results;

/**
 * How a kind of figure was made.
 *
 * @param figure JSON Pointer, * for every index
 * @param how value and interval
 */
public record Method(String figure, String how) {}
