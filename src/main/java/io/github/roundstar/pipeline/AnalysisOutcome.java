package io.github.roundstar.pipeline;

import io.github.roundstar.results.Faults;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What came of a job.
 *
 * @param nights finished nights in order of time
 * @param index page that links the nights, where there are several
 * @param unusable inputs that could not be used, each {@code file:line: what is wrong: how to mend
 *     it}
 * @param faults what faults of the tool took: nights, or parts of nights
 * @param lost names of nights that a fault took whole
 * @param warnings what the user should know about the inputs that were used
 */
public record AnalysisOutcome(
    List<FinishedNight> nights,
    Optional<Path> index,
    List<String> unusable,
    List<Faults.Caught> faults,
    List<String> lost,
    List<String> warnings) {
  /** Copies. */
  public AnalysisOutcome {
    nights = List.copyOf(nights);
    unusable = List.copyOf(unusable);
    faults = List.copyOf(faults);
    lost = List.copyOf(lost);
    warnings = List.copyOf(warnings);
  }
}
