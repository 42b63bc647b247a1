package io.github.roundstar.results;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;

/**
 * One figure before and after.
 *
 * @param key short name, the same in every version
 * @param name in words
 * @param group mount, guiding or air
 * @param unit unit of the values
 * @param better what would be better: lower, higher, or nearer to so many units
 * @param nightsBefore nights before that have the figure
 * @param nightsAfter nights after that have it
 * @param before mean over the nights before, as distance from the target where there is one
 * @param after likewise after
 * @param change after less before, with the interval that the verdict rests on: all figures of the
 *     comparison taken together
 * @param probability that chance makes so large a change either way
 * @param adjustedProbability the same, all figures of the comparison taken together
 * @param margin changes within this are none in practice
 * @param marginBecause why that much
 * @param nightToNight standard deviation that nights are expected to show without any change
 * @param nightToNightBecause why that much
 * @param verdict better, worse, no real change or cannot tell
 * @param because what the verdict rests on
 * @param moreNights further nights on each side that would tell; null when it is told, or no
 *     reasonable number would
 * @param adjustment what was taken out of the values; null when nothing was
 */
public record ComparedFigure(
    String key,
    String name,
    String group,
    String unit,
    String better,
    int nightsBefore,
    int nightsAfter,
    Estimate before,
    Estimate after,
    Estimate change,
    double probability,
    double adjustedProbability,
    double margin,
    String marginBecause,
    double nightToNight,
    String nightToNightBecause,
    String verdict,
    String because,
    Integer moreNights,
    String adjustment) {
  /** After is nearer to what is wanted. */
  public static final String BETTER = "better";

  /** After is farther from what is wanted. */
  public static final String WORSE = "worse";

  /** The whole interval lies inside the margin. */
  public static final String NO_REAL_CHANGE = "no real change";

  /** None of the others is known. */
  public static final String CANNOT_TELL = "cannot tell";

  /** {@code 5.83 to 1.44 arcsec}, as many decimals as the change's interval supports. */
  public String fromTo() {
    return (Decimals.text(before.value(), decimals())
            + " to "
            + Decimals.text(after.value(), decimals())
            + " "
            + unit)
        .strip();
  }

  /** {@code -4.39 (-6.51 .. -2.27)}. */
  public String changed() {
    return Decimals.text(change, decimals());
  }

  /** Decimals of both sides and of the change. */
  public int decimals() {
    return Decimals.ofChange(change, before, after);
  }
}
