package io.github.roundstar.results;

/**
 * What to do.
 *
 * @param decision in one word
 * @param rung the rung of the ladder that is decided on; null where the log cannot tell, and in
 *     results of earlier versions
 * @param mount about the mount
 * @param axis about polar axis and balance; null in results of earlier versions
 * @param settings about the settings
 * @param sky about the sky
 * @param optics about optics and flexure; null in results of earlier versions
 * @param summary one sentence
 */
public record Verdict(
    Decision decision,
    String rung,
    Judgement mount,
    Judgement axis,
    Judgement settings,
    Judgement sky,
    Judgement optics,
    String summary) {
  /** As in earlier versions. */
  public Verdict(
      Decision decision, Judgement mount, Judgement sky, Judgement settings, String summary) {
    this(decision, null, mount, null, settings, sky, null, summary);
  }
}
