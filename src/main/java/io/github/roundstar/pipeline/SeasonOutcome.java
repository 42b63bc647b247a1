package io.github.roundstar.pipeline;

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
 * @param faults nights that a fault of the tool stopped
 */
public record SeasonOutcome(
    SeasonResult result, Path index, Path json, int analysed, int kept, List<NightFault> faults) {
  /** Copies. */
  public SeasonOutcome {
    faults = List.copyOf(faults);
  }
}
