package io.github.roundstar.pipeline;

import io.github.roundstar.results.CompareResult;
import io.github.roundstar.results.Faults;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What came of a comparison.
 *
 * @param result the figures; empty when a side had no night
 * @param report the HTML page
 * @param json the JSON result
 * @param unusable inputs that could not be used
 * @param faults what faults of the tool took: nights, or parts of nights
 * @param lost names of nights that a fault took whole
 * @param warnings what the user should know
 */
public record CompareOutcome(
    Optional<CompareResult> result,
    Path report,
    Path json,
    List<String> unusable,
    List<Faults.Caught> faults,
    List<String> lost,
    List<String> warnings) {
  /** Copies. */
  public CompareOutcome {
    unusable = List.copyOf(unusable);
    faults = List.copyOf(faults);
    lost = List.copyOf(lost);
    warnings = List.copyOf(warnings);
  }
}
