package io.github.roundstar.results;

import java.util.List;

/**
 * What the mean square about the set point is made of; the parts add up to rms^2 + mean^2.
 *
 * @param ra right ascension; null when it cannot be told
 * @param dec declination; null when it cannot be told
 */
public record Budget(List<BudgetPart> ra, List<BudgetPart> dec) {
  /** Copies the lists. */
  public Budget {
    ra = ra == null ? null : List.copyOf(ra);
    dec = dec == null ? null : List.copyOf(dec);
  }
}
