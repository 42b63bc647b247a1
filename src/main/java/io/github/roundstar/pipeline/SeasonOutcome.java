package io.github.roundstar.pipeline;

import io.github.roundstar.results.Faults;
import io.github.roundstar.results.SeasonResult;
import java.nio.file.Path;
import java.util.List;

/**
 * What came of a season.
 *
 * @param result the figures
 * @param index the page that links the nights
 * @param json the JSON result
 * @param analysed nights analysed now
 * @param kept nights whose logs and results were as before
 * @param faults what faults of the tool took: nights, or parts of nights
 * @param lost names of nights that a fault took whole
 */
public record SeasonOutcome(
    SeasonResult result,
    Path index,
    Path json,
    int analysed,
    int kept,
    List<Faults.Caught> faults,
    List<String> lost) {
  /** Copies. */
  public SeasonOutcome {
    faults = List.copyOf(faults);
    lost = List.copyOf(lost);
  }
}
