package io.github.roundstar.results;

import java.util.List;

/**
 * What the mean square about the set point is made of; the parts add up to rms^2 + mean^2.
 *
 * @param ra right ascension; null when it cannot be told
 * @param dec declination; null when it cannot be told
 * @param raTrailingArcsec2 mean square in right ascension that is left when the mean of every
 *     exposure is taken out [arcsec^2]; null where {@code ra} is, and in results of older versions
 * @param decTrailingArcsec2 the same in declination [arcsec^2]
 */
public record Budget(
    List<BudgetPart> ra,
    List<BudgetPart> dec,
    Double raTrailingArcsec2,
    Double decTrailingArcsec2) {
  /** Copies the lists. */
  public Budget {
    ra = ra == null ? null : List.copyOf(ra);
    dec = dec == null ? null : List.copyOf(dec);
  }
}
