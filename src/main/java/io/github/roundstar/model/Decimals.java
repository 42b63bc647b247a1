package io.github.roundstar.model;

import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * How many decimals a number is written with: as many as its interval supports. The one rule for
 * pages, sentences in results and the terminal.
 */
public final class Decimals {
  private static final int MOST = 4;
  private static final double LEAST_ONE_DIGIT = 3.55;

  private Decimals() {}

  /**
   * Two digits of the half-width while they are below 35, else one; one more where the value would
   * be shown as zero and is none.
   *
   * @see "Particle Data Group, Review of Particle Physics, Introduction, section on rounding; the
   *     limit of 354 is quoted from memory"
   */
  public static int of(Estimate estimate) {
    return of(estimate, 1, estimate.value());
  }

  /** Of a change and both of its sides: one more where a side would keep less than two digits. */
  public static int ofChange(Estimate change, Estimate before, Estimate after) {
    return of(change, 2, before.value(), after.value());
  }

  private static int of(Estimate estimate, int leastDigits, double... values) {
    double halfWidth = (estimate.hi95() - estimate.lo95()) / 2;
    double size =
        Math.max(Math.abs(estimate.value()), Math.max(Math.abs(estimate.lo95()), estimate.hi95()));
    int most = size == 0 ? 0 : 4 - leading(size);
    if (halfWidth <= 0) {
      return clamp(most - 1, MOST);
    }
    int first = leading(halfWidth);
    int wanted = halfWidth / Math.pow(10, first) < LEAST_ONE_DIGIT ? 1 - first : -first;
    double shown = (leastDigits == 1 ? 0.5 : 9.5) * Math.pow(10, -wanted);
    boolean few =
        DoubleStream.of(values).map(Math::abs).anyMatch(value -> value > 0 && value < shown);
    return clamp(Math.min(few ? wanted + 1 : wanted, most), MOST);
  }

  /** Of a number without interval: three significant digits, at most two decimals from 0.1 up. */
  public static int of(double value) {
    double size = Math.abs(value);
    if (size == 0) {
      return 0;
    }
    return size < 0.1 ? clamp(1 - leading(size), MOST) : clamp(2 - leading(size), 2);
  }

  /** So many decimals, never a negative zero. */
  public static String text(double value, int decimals) {
    String digits = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value));
    boolean zero = digits.chars().allMatch(c -> c == '0' || c == '.');
    return value < 0 && !zero ? "-" + digits : digits;
  }

  /** A number without interval. */
  public static String text(double value) {
    return text(value, of(value));
  }

  /** {@code 1.84 (1.71 .. 1.98)}. */
  public static String text(Estimate estimate) {
    return text(estimate, of(estimate));
  }

  /** The same with so many decimals. */
  public static String text(Estimate estimate, int decimals) {
    return text(estimate.value(), decimals)
        + " ("
        + text(estimate.lo95(), decimals)
        + " .. "
        + text(estimate.hi95(), decimals)
        + ")";
  }

  private static int leading(double size) {
    return (int) Math.floor(Math.log10(size));
  }

  private static int clamp(int decimals, int most) {
    return Math.max(0, Math.min(most, decimals));
  }
}
