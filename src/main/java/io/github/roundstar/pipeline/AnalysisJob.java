package io.github.roundstar.pipeline;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * What is to be analysed.
 *
 * @param logs files, folders or glob patterns
 * @param equipment equipment file
 * @param layout layout file for logs that are no guide tables
 * @param out folder for the results; made when missing
 * @param utcOffset offset of the logs' clocks, instead of what their headers say
 * @param siteShown whether what gives the site away may stand in the results
 * @param siteInReport whether the report may tell it exactly, not rounded
 * @param version version of the tool
 * @param exposures folder or list of the main camera's exposures
 */
public record AnalysisJob(
    List<String> logs,
    Optional<Path> equipment,
    Optional<Path> layout,
    Path out,
    Optional<ZoneOffset> utcOffset,
    boolean siteShown,
    boolean siteInReport,
    String version,
    Optional<Path> exposures) {
  /** Copies. */
  public AnalysisJob {
    logs = List.copyOf(logs);
  }

  /** A job without exposures whose report rounds what gives the site away. */
  public AnalysisJob(
      List<String> logs,
      Optional<Path> equipment,
      Optional<Path> layout,
      Path out,
      Optional<ZoneOffset> utcOffset,
      boolean siteShown,
      String version) {
    this(logs, equipment, layout, out, utcOffset, siteShown, false, version, Optional.empty());
  }
}
