package io.github.roundstar.pipeline;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/**
 * What is to be compared.
 *
 * @param before logs, JSON results, folders or glob patterns of the nights before
 * @param after likewise after
 * @param equipment equipment file, for logs
 * @param layout layout file for logs that are no guide tables
 * @param out folder for the results; made when missing
 * @param utcOffset offset of the logs' clocks, instead of what their headers say
 * @param version version of the tool
 */
public record CompareJob(
    List<String> before,
    List<String> after,
    Optional<Path> equipment,
    Optional<Path> layout,
    Path out,
    Optional<ZoneOffset> utcOffset,
    String version) {
  /** Copies. */
  public CompareJob {
    before = List.copyOf(before);
    after = List.copyOf(after);
  }
}
