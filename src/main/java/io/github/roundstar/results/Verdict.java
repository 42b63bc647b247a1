package io.github.roundstar.results;

/**
 * What to do.
 *
 * @param decision adjust-mount, adjust-polar-axis, change-settings, rebalance, leave-alone or
 *     cannot-tell
 * @param mount about the mount
 * @param sky about the sky
 * @param settings about the settings
 * @param summary one sentence
 */
public record Verdict(
    String decision, Judgement mount, Judgement sky, Judgement settings, String summary) {}
