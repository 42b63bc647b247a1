package io.github.roundstar.compare;

import io.github.roundstar.signal.Welch;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;

/**
 * One figure over the nights of one side. A night is one value.
 *
 * <p>The variance between nights is known from few nights only, so it is moderated: the stated
 * scatter counts like {@value #STATED_WEIGHT} further degrees of freedom, raised where the nights
 * scatter more than it says, and the variance never lies below what the nights are uncertain within
 * themselves.
 *
 * @see "Smyth (2004), Statistical Applications in Genetics and Molecular Biology 3, 3, section 3"
 */
final class NightSample {
  /**
   * Degrees of freedom that the stated scatter stands for: on 400 invented seasons of three nights
   * a side, fewer find a cut of 30 % too seldom, more trust the stated figure too far.
   */
  static final double STATED_WEIGHT = 5;

  private final double[] values;
  private final double within;
  private final double stated;

  private NightSample(double[] values, double within, double stated) {
    this.values = values;
    this.within = within;
    this.stated = stated;
  }

  /** The nights that have the figure; values as distance from the target where there is one. */
  static NightSample of(Figure figure, List<Reading> readings) {
    List<Reading> known = readings.stream().filter(Reading::known).toList();
    double[] values =
        known.stream().mapToDouble(reading -> figure.aim().compared(reading.value())).toArray();
    double within =
        known.stream().mapToDouble(r -> r.withinError() * r.withinError()).average().orElse(0);
    double level = known.stream().mapToDouble(Reading::value).average().orElse(0);
    double between = figure.nightToNight().combined(level);
    return new NightSample(values, within, between * between + within);
  }

  int nights() {
    return values.length;
  }

  double[] values() {
    return values.clone();
  }

  double mean() {
    return StatUtils.mean(values);
  }

  /** Degrees of freedom that the nights themselves give. */
  int ownFreedom() {
    return values.length - 1;
  }

  /** Scatter of the nights over what is stated for them; variances. 1 for a single night. */
  double excess() {
    return ownFreedom() == 0 || stated == 0 ? 1 : StatUtils.variance(values) / stated;
  }

  /** Variance of one night. */
  double variance(double raise) {
    double own = ownFreedom() == 0 ? 0 : ownFreedom() * StatUtils.variance(values);
    double moderated = (STATED_WEIGHT * stated * raise + own) / (STATED_WEIGHT + ownFreedom());
    return Math.max(moderated, within);
  }

  double freedom() {
    return STATED_WEIGHT + ownFreedom();
  }

  /** The mean as it enters a comparison, as if there were {@code more} nights like these. */
  Welch.Mean meanWith(int more, double raise) {
    return new Welch.Mean(mean(), variance(raise) / (nights() + more), freedom() + more);
  }
}
