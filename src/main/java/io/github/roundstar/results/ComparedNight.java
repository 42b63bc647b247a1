package io.github.roundstar.results;

/**
 * A night that went into a comparison.
 *
 * @param night its name
 * @param startUtc first frame, ISO 8601; null when the log has no absolute time
 * @param file result or log that it came from, without folders
 * @param guidedHours hours guided
 */
public record ComparedNight(String night, String startUtc, String file, double guidedHours) {}
