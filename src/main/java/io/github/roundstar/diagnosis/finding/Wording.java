package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import java.util.List;
import java.util.Locale;

/** Numbers and lists in the sentences of findings. */
final class Wording {
  private Wording() {}

  /** Three significant digits at most, without an exponent. */
  static String number(double value) {
    double size = Math.abs(value);
    String digits =
        String.format(Locale.ROOT, size >= 99.5 ? "%.0f" : size >= 9.95 ? "%.1f" : "%.2f", size);
    boolean zero = digits.chars().allMatch(c -> c == '0' || c == '.');
    return value < 0 && !zero ? "-" + digits : digits;
  }

  /** {@code 1.84 (1.71 .. 1.98)}. */
  static String both(Estimate estimate) {
    return number(estimate.value())
        + " ("
        + number(estimate.lo95())
        + " .. "
        + number(estimate.hi95())
        + ")";
  }

  /** {@code 43 %}. */
  static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share + 0.0);
  }

  /** {@code 43 % (38 .. 47)}. */
  static String percent(Estimate share) {
    return String.format(
        Locale.ROOT,
        "%.0f %% (%.0f .. %.0f)",
        100 * share.value() + 0.0,
        100 * share.lo95() + 0.0,
        100 * share.hi95() + 0.0);
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

  /** {@code a, b and c}. */
  static String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }

  static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  /** With a capital at its head and a full stop at its end. */
  static String sentence(String text) {
    return capital(text.endsWith(".") ? text : text + ".");
  }

  static String small(String text) {
    return text.isEmpty() ? text : Character.toLowerCase(text.charAt(0)) + text.substring(1);
  }
}
