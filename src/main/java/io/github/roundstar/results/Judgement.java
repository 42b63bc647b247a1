package io.github.roundstar.results;

/**
 * One sentence with its level.
 *
 * @param level of the weightiest finding about it
 * @param text the sentence
 * @param costs exposures that it costs; null where that is not asked or not known
 */
public record Judgement(Level level, String text, Integer costs) {
  /** Without a count of exposures. */
  public Judgement(Level level, String text) {
    this(level, text, null);
  }
}
