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
 * @param withoutCharts why the report has no charts, if it has none
 */
public record FinishedNight(
    NightResult result, Path report, Path json, Optional<String> withoutCharts) {}
