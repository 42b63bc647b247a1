package io.github.roundstar.results;

/**
 * What to do.
 *
 * @param decision in one word
 * @param mount about the mount
 * @param sky about the sky
 * @param settings about the settings
 * @param summary one sentence
 */
public record Verdict(
    Decision decision, Judgement mount, Judgement sky, Judgement settings, String summary) {}
