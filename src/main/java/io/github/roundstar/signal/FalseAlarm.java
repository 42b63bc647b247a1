package io.github.roundstar.signal;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/**
 * Probability that noise alone lifts the highest peak of a periodogram to a given height.
 *
 * <p>Both forms count on independent Gaussian noise of known or fitted size. For noise with a
 * spectrum of its own, divide the powers by it first and use {@link #ofSum}.
 */
public final class FalseAlarm {
  private FalseAlarm() {}

  /**
   * For one series and the power of {@link Periodogram}, frequencies from 0 to {@code maxHz}. An
   * upper bound, close for small results.
   *
   * @param power height p of the peak, 0 to 1
   * @param samples number of samples, at least 4
   * @param maxHz highest frequency searched [Hz]
   * @param timeVariance variance of the sample times, divisor n, weighted if the fit was [s&sup2;]
   * @return 0 to 1
   * @see "Baluev (2008), MNRAS 385, 1279, table 1 and equations 5 and 6"
   */
  public static double ofPower(double power, int samples, double maxHz, double timeVariance) {
    Check.atLeast("number of samples", samples, 4);
    if (!(power >= 0 && power <= 1)) {
      throw new IllegalArgumentException("power " + power + " is outside [0, 1]");
    }
    double n = samples;
    double single = Math.pow(1 - power, (n - 3) / 2);
    double gamma =
        Math.sqrt(2 / (n - 1))
            * Math.exp(Gamma.logGamma((n - 1) / 2) - Gamma.logGamma((n - 2) / 2));
    double width = maxHz * Math.sqrt(4 * Math.PI * timeVariance);
    double crossings =
        gamma * width * Math.pow(1 - power, (n - 4) / 2) * Math.sqrt((n - 1) * power / 2);
    return either(single, crossings);
  }

  /**
   * The power whose {@link #ofPower} is {@code probability}.
   *
   * @param probability between 0 and 1, both excluded
   * @param samples number of samples, at least 5
   */
  public static double powerAt(double probability, int samples, double maxHz, double timeVariance) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException("probability " + probability + " is outside (0, 1)");
    }
    Check.atLeast("number of samples", samples, 5);
    return new BrentSolver(1e-14, 1e-14, Double.MIN_NORMAL)
        .solve(1000, p -> ofPower(p, samples, maxHz, timeVariance) - probability, 0, 1);
  }

  /**
   * For a sum of powers over independent runs, each power in units of its noise's mean: half of a
   * chi-square of 2 degrees of freedom. Counts up-crossings of the sum, a chi-square process of 2R
   * degrees of freedom, by Rice's formula; an upper bound.
   *
   * <p>Runs of unlike length: with the mean of their time variances the bound still holds, since
   * the mean rate of crossing goes with the mean of square roots of weighted variances, which is at
   * most the square root of the mean.
   *
   * @param sum height z of the peak of the summed powers, at least 0
   * @param runs number R of runs, at least 1
   * @param bandHz width of the band searched [Hz]
   * @param timeVariance mean over the runs of the variance of their sample times [s&sup2;]
   * @return 0 to 1
   * @see "Davies (1987), Biometrika 74, 33"
   */
  public static double ofSum(double sum, int runs, double bandHz, double timeVariance) {
    Check.atLeast("number of runs", runs, 1);
    if (!(sum >= 0)) {
      throw new IllegalArgumentException("sum " + sum + " is negative");
    }
    if (sum == 0) {
      return 1;
    }
    double single = Gamma.regularizedGammaQ(runs, sum);
    // sqrt(lambda / pi) with lambda = 4 pi^2 var(t), the mean square slope of each component.
    double rate = Math.sqrt(4 * Math.PI * timeVariance);
    double density = Math.exp((runs - 0.5) * Math.log(sum) - sum - Gamma.logGamma(runs));
    return either(single, rate * density * bandHz);
  }

  /** 1 - (1 - single) exp(-crossings), to full precision for small ones. */
  private static double either(double single, double crossings) {
    return single - (1 - single) * Math.expm1(-crossings);
  }
}
