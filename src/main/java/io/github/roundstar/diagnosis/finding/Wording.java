package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;

/** Numbers and lists in the sentences of findings. */
final class Wording {
  private Wording() {}

  /** A number without an interval. */
  static String number(double value) {
    return Decimals.text(value);
  }

  /** {@code 1.84 (1.71 .. 1.98)}. */
  static String both(Estimate estimate) {
    return Decimals.text(estimate);
  }

  /** {@code 43 %}. */
  static String percent(double share) {
    return Decimals.text(100 * share, 0) + " %";
  }

  /** {@code 43 % (38 .. 47)}. */
  static String percent(Estimate share) {
    return percent(share.value())
        + " ("
        + Decimals.text(100 * share.lo95(), 0)
        + " .. "
        + Decimals.text(100 * share.hi95(), 0)
        + ")";
  }

  /** {@code 43 % (38 .. 47) of the whole}; in words where it is nearly none. */
  static String shareOf(Estimate share, String whole) {
    if (100 * share.value() >= 0.5) {
      return percent(share) + " of " + whole;
    }
    return 100 * share.hi95() >= 0.5
        ? "next to nothing of " + whole + ", at most " + percent(share.hi95())
        : "less than half a percent of " + whole;
  }

  /** {@code 7 min 59 s}, {@code 42 s}. */
  static String period(double seconds) {
    long whole = Math.round(seconds);
    return whole < 60
        ? number(seconds) + " s"
        : whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
  }

  /** {@code 1 exposure}, {@code 12 exposures}. */
  static String counted(int count, String singular) {
    return count + " " + singular + (count == 1 ? "" : "s");
  }

  static String small(String text) {
    return text.isEmpty() ? text : Character.toLowerCase(text.charAt(0)) + text.substring(1);
  }
}
