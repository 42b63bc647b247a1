package io.github.roundstar.diagnosis.exposures;

/**
 * What trailed an exposure.
 *
 * @param code such as {@code periodic-error}; null when none stands out
 * @param evidence why, in numbers
 */
record Cause(String code, String evidence) {}
