package io.github.roundstar.results;

import java.util.List;

/**
 * A night of a season.
 *
 * @param night its name
 * @param startUtc first frame, ISO 8601; null when the log has no absolute time
 * @param guidedHours hours guided
 * @param result file of its JSON result, beside this document
 * @param report file of its page, beside this document
 * @param sha256 hashes of the logs that went in
 */
public record SeasonNight(
    String night,
    String startUtc,
    double guidedHours,
    String result,
    String report,
    List<String> sha256) {
  /** Copies the list. */
  public SeasonNight {
    sha256 = List.copyOf(sha256);
  }
}
