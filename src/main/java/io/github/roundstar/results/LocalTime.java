package io.github.roundstar.results;

/**
 * The time of day where the telescope stands. It is the log's or the longitude's, never that of the
 * machine that reads the log.
 *
 * @param offsetSeconds what it is ahead of UTC [s]
 * @param source where the offset comes from
 */
public record LocalTime(int offsetSeconds, Source source) {
  private static final int QUARTER_SECONDS = 900;

  /** Where an offset comes from. */
  public enum Source {
    /** The log gives its clock's offset from UTC. */
    LOG,
    /** Mean solar time at the site's longitude. */
    LONGITUDE
  }

  /** As far as it may be told without telling the longitude: solar time to a quarter of an hour. */
  public LocalTime rounded() {
    return source == Source.LOG
        ? this
        : new LocalTime(
            (int) (QUARTER_SECONDS * Math.rint((double) offsetSeconds / QUARTER_SECONDS)), source);
  }
}
