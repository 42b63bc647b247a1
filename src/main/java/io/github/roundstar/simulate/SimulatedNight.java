package io.github.roundstar.simulate;

import java.util.List;

/**
 * A simulated night.
 *
 * @param scenario what it was made from, which is the rest of the truth
 * @param runs its runs in order of time
 */
public record SimulatedNight(Scenario scenario, List<SimulatedRun> runs) {
  /** Copies. */
  public SimulatedNight {
    runs = List.copyOf(runs);
  }
}
