package io.github.roundstar.signal;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The correlation of noise from sample to sample, as far as a series and what is known beforehand
 * tell it: half of all nights have noise without a memory, the others one whose correlation is a
 * half-normal of scale {@link #USUAL}. A plain estimate would make every figure beside white noise
 * worse that depends on the memory, and white noise until the memory is clear would make their
 * intervals too narrow beside noise that has some.
 *
 * @param mean posterior mean, in standard errors of the estimate [&ge; 0]
 * @param deviation posterior standard deviation, likewise
 * @see "Mitchell &amp; Beauchamp (1988), J. Am. Stat. Assoc. 83, 1023, for a prior with a spike
 *     (from memory)"
 */
public record MemoryWeight(double mean, double deviation) {
  /** Common correlations of seeing over a few seconds; common practice, no source. */
  private static final double USUAL = 0.1;

  private static final double NO_MEMORY = 0.5;

  /** So far below none an estimate is by chance, and the normal tail is still told by division. */
  private static final double LOWEST = -5;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /**
   * Weighs an estimate.
   *
   * @param standardErrors the estimate in units of its standard error; below zero by chance
   * @param error its standard error, as a correlation; 0 where there is no estimate
   */
  static MemoryWeight of(double standardErrors, double error) {
    if (!(error > 0)) {
      return new MemoryWeight(0, 0);
    }
    double estimate = Math.max(LOWEST, standardErrors);
    double before = Math.pow(USUAL / error, 2);
    double variance = before / (1 + before);
    double width = Math.sqrt(variance);
    double likeliest = estimate * variance;
    double positive = NORMAL.cumulativeProbability(likeliest / width);
    double some =
        2 * NORMAL.density(estimate / Math.sqrt(1 + before)) / Math.sqrt(1 + before) * positive;
    double none = NORMAL.density(estimate);
    double weight = (1 - NO_MEMORY) * some / ((1 - NO_MEMORY) * some + NO_MEMORY * none);
    // Mean and variance of a normal without what lies below zero.
    double tail = NORMAL.density(likeliest / width) / positive;
    double mean = likeliest + width * tail;
    double spread = variance * (1 - likeliest / width * tail - tail * tail);
    double whole = weight * mean;
    return new MemoryWeight(
        whole, Math.sqrt(Math.max(0, weight * (spread + mean * mean) - whole * whole)));
  }
}
