package io.github.roundstar.results;

/**
 * What is asked of a night.
 *
 * @param kind elongation, axis-rms or radial-rms
 * @param limit largest elongation, or largest RMS of the logged offsets [arcsec]
 * @param from user or tool: whose limit it is
 * @param share least share of the exposures that has to come out round; 1 for an RMS
 */
public record Need(String kind, double limit, String from, double share) {
  /** Stars are to be round. */
  public static final String ELONGATION = "elongation";

  /** Both axes together keep within an RMS. */
  public static final String RADIAL_RMS = "radial-rms";

  /** Whether it is about round stars. */
  public boolean ofStars() {
    return kind.equals(ELONGATION);
  }

  /** How many of some exposures have to come out round. */
  public int round(int units) {
    return (int) Math.ceil(share * units - 1e-9);
  }
}
