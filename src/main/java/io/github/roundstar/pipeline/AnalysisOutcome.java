package io.github.roundstar.pipeline;

import java.util.List;

/**
 * What came of a job.
 *
 * @param nights finished nights in order of time
 * @param unusable inputs that could not be used, each {@code file:line: what is wrong: how to mend
 *     it}
 * @param faults nights that could not be finished
 * @param warnings what the user should know about the inputs that were used
 */
public record AnalysisOutcome(
    List<FinishedNight> nights,
    List<String> unusable,
    List<NightFault> faults,
    List<String> warnings) {
  /** Copies. */
  public AnalysisOutcome {
    nights = List.copyOf(nights);
    unusable = List.copyOf(unusable);
    faults = List.copyOf(faults);
    warnings = List.copyOf(warnings);
  }
}
