package io.github.roundstar.results;

import java.util.List;

/**
 * What the mean square about the set point is made of; the parts add up to rms^2 + mean^2.
 *
 * @param ra right ascension
 * @param dec declination
 */
public record Budget(List<BudgetPart> ra, List<BudgetPart> dec) {
  /** Copies the lists. */
  public Budget {
    ra = List.copyOf(ra);
    dec = List.copyOf(dec);
  }
}
