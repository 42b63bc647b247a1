package io.github.roundstar.decisions;

/** Placeholder. */
final class Contradictions {}
