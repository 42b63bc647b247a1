package io.github.roundstar.simulate;

import java.util.ArrayList;
import java.util.List;

/** The front door: scenario in, night out. */
public final class Simulation {
  private Simulation() {}

  /** Plays a night. The same scenario gives the same bits on every machine. */
  public static SimulatedNight run(Scenario scenario) {
    List<SimulatedRun> runs = new ArrayList<>();
    for (RunPlan plan : scenario.runs()) {
      runs.add(new RunSimulator(scenario, plan, runs.size() + 1).play());
    }
    return new SimulatedNight(scenario, runs);
  }
}
