package io.github.roundstar.dialects;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * An invented log and what it says.
 *
 * @param seed what made it
 * @param name a file name that carries the seed
 * @param bytes the file
 * @param text the same as characters, without byte order mark
 * @param obstacles what stands between the text and a reader
 * @param openFacts what neither text nor numbers tell; all of them, also those that change no
 *     figure
 * @param answers what someone who knows would answer to each open fact
 * @param notGuiding whether it is no log of guiding at all, so that the only right reading is a
 *     refusal; then there is no truth
 * @param truth what it says; empty when {@code notGuiding}
 */
public record DialectLog(
    long seed,
    String name,
    byte[] bytes,
    String text,
    List<Obstacle> obstacles,
    Set<OpenFact> openFacts,
    Map<OpenFact, String> answers,
    boolean notGuiding,
    Optional<Truth> truth) {

  /** Whether text and numbers hold all that a careful reader needs for the figures of guiding. */
  public boolean answerable() {
    return !notGuiding && openFacts.stream().noneMatch(OpenFact::changesFigures);
  }

  @Override
  public String toString() {
    return name
        + " "
        + obstacles
        + (notGuiding ? " not guiding" : "")
        + (openFacts.isEmpty() ? "" : " open " + openFacts);
  }
}
