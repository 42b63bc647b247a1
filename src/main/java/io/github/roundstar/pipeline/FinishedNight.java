package io.github.roundstar.pipeline;

import io.github.roundstar.results.NightResult;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A night whose files are in place.
 *
 * @param result the figures
 * @param report the HTML report
 * @param json the JSON result
 * @param outline the night in a line, for the page of all nights
 * @param withoutCharts why the report has no charts, if it has none
 */
public record FinishedNight(
    NightResult result, Path report, Path json, double[] outline, Optional<String> withoutCharts) {}
