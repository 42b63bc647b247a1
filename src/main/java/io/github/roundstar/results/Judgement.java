package io.github.roundstar.results;

/**
 * One sentence with its level.
 *
 * @param level of the weightiest finding about it
 * @param text the sentence
 */
public record Judgement(Level level, String text) {}
