package io.github.roundstar.dialects;

/** Decimal digits of numbers, quickly and without any locale. */
final class Digits {
  private Digits() {}

  /**
   * A number with a fixed count of decimals, halves away from zero; never a negative zero.
   *
   * @param decimals 0 to 9
   */
  static String fixed(double value, int decimals) {
    long scale = 1;
    for (int d = 0; d < decimals; d++) {
      scale *= 10;
    }
    long units = Math.round(Math.abs(value) * scale);
    StringBuilder text = new StringBuilder();
    if (value < 0 && units != 0) {
      text.append('-');
    }
    text.append(units / scale);
    if (decimals > 0) {
      text.append('.');
      String part = Long.toString(units % scale);
      text.append("0".repeat(decimals - part.length())).append(part);
    }
    return text.toString();
  }

  /** Two digits with a leading zero. */
  static String two(long value) {
    return value < 10 ? "0" + value : "" + value;
  }
}
