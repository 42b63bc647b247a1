package io.github.roundstar.results;

/**
 * Why a figure is null.
 *
 * @param figure JSON Pointer, * for every index
 * @param because the reason, and what would make it computable
 */
public record NotComputed(String figure, String because) {}
