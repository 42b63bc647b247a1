package io.github.roundstar.pipeline;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * A season to be worked out.
 *
 * @param folder every log below it
 * @param changes file with dates of work on the mount
 * @param equipment equipment file
 * @param layout layout file for logs that are no guide tables
 * @param out folder for the results; made when missing
 * @param utcOffset offset of the logs' clocks, instead of what their headers say
 * @param version version of the tool
 */
public record SeasonJob(
    Path folder,
    Optional<Path> changes,
    Optional<Path> equipment,
    Optional<Path> layout,
    Path out,
    Optional<ZoneOffset> utcOffset,
    String version) {}
