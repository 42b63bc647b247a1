package io.github.roundstar.results;

/**
 * One sentence with its level.
 *
 * @param level fix-first, worth-fixing, watch or fine
 * @param text the sentence
 */
public record Judgement(String level, String text) {}
