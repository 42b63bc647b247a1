package io.github.roundstar.simulate;

import java.math.BigDecimal;

/** Rounds without the help of the JDK's number formatting, whose last digit differs by version. */
final class FixedDecimal {
  private FixedDecimal() {}

  /** With exactly so many places, half to even; empty for NaN, never a minus zero. */
  static String text(double value, int places) {
    return Double.isNaN(value) ? "" : of(value, places).toPlainString();
  }

  /** With as many places as needed, one at least and {@code places} at most. */
  static BigDecimal shortest(double value, int places) {
    BigDecimal stripped = of(value, places).stripTrailingZeros();
    return stripped.setScale(Math.max(1, stripped.scale()));
  }

  private static BigDecimal of(double value, int places) {
    double unit = BigDecimal.TEN.pow(places).doubleValue();
    return BigDecimal.valueOf((long) Math.rint(value * unit), places);
  }
}
