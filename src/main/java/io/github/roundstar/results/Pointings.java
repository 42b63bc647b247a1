package io.github.roundstar.results;

import java.util.List;

/**
 * Where the telescope looked in a night, and what went with it.
 *
 * @param targets the fields guided on, in the order in which they were first looked at
 * @param flips from one side of the pier to the other, in order of time
 * @param airmass how noise and scatter grow towards the horizon; null where it cannot be told
 */
public record Pointings(List<Target> targets, List<Flip> flips, AirmassGrowth airmass) {
  /** Copies the lists. */
  public Pointings {
    targets = List.copyOf(targets);
    flips = List.copyOf(flips);
  }
}
