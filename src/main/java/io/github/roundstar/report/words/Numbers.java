package io.github.roundstar.report.words;

import io.github.roundstar.model.Estimate;
import java.util.Locale;

/** Numbers as a report writes them. */
public final class Numbers {
  /** Stands where a figure is null. */
  public static final String NOT_KNOWN = "not known";

  private static final int MOST_DECIMALS = 4;
  private static final char MINUS = '\u2212';

  private Numbers() {}

  /** A figure without interval: three significant digits, at most two decimals from 0.1 up. */
  public static String plain(double value) {
    double size = Math.abs(value);
    if (size == 0) {
      return "0";
    }
    if (size < 0.0005) {
      return (value < 0 ? "above " + MINUS : "below ") + "0.0005";
    }
    int leading = (int) Math.floor(Math.log10(size));
    return fixed(value, size < 0.1 ? Math.min(MOST_DECIMALS, 1 - leading) : clampTo2(2 - leading));
  }

  /** A figure without interval, or {@link #NOT_KNOWN}. */
  public static String plain(Double value) {
    return value == null ? NOT_KNOWN : plain(value.doubleValue());
  }

  /** A figure that only needs to be placed: two significant digits, no decimals from 10 up. */
  public static String coarse(double value) {
    double size = Math.abs(value);
    int leading = size == 0 ? 0 : (int) Math.floor(Math.log10(size));
    return fixed(value, Math.max(0, Math.min(MOST_DECIMALS, 1 - leading)));
  }

  /** So many decimals, never a negative zero. */
  public static String fixed(double value, int decimals) {
    String digits = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value));
    boolean zero = digits.chars().allMatch(c -> c == '0' || c == '.');
    return value < 0 && !zero ? MINUS + digits : digits;
  }

  /** Best value of an estimate, as many digits as its interval supports. */
  public static String value(Estimate estimate) {
    return estimate == null ? NOT_KNOWN : fixed(estimate.value(), decimals(estimate));
  }

  /** {@code (1.71 .. 1.98)}; empty without an estimate. */
  public static String interval(Estimate estimate) {
    if (estimate == null) {
      return "";
    }
    int decimals = decimals(estimate);
    return "(" + fixed(estimate.lo95(), decimals) + " .. " + fixed(estimate.hi95(), decimals) + ")";
  }

  /** Value and interval: {@code 1.84 (1.71 .. 1.98)}. */
  public static String both(Estimate estimate) {
    return estimate == null ? NOT_KNOWN : value(estimate) + " " + interval(estimate);
  }

  /** A whole number, thousands set apart by a narrow space from 10 000 on. */
  public static String count(long value) {
    String digits = Long.toString(Math.abs(value));
    StringBuilder result = new StringBuilder(value < 0 ? String.valueOf(MINUS) : "");
    for (int i = 0; i < digits.length(); i++) {
      if (i > 0 && digits.length() > 4 && (digits.length() - i) % 3 == 0) {
        result.append('\u202f');
      }
      result.append(digits.charAt(i));
    }
    return result.toString();
  }

  /** {@code 12 frames}, {@code 1 frame}. */
  public static String counted(long value, String singular, String plural) {
    return count(value) + " " + (value == 1 ? singular : plural);
  }

  /** A share as whole percent. */
  public static String percent(double share) {
    return fixed(share * 100, 0) + " %";
  }

  /** A probability; one too small for a double is not zero. */
  public static String chance(double probability) {
    return plain(Math.max(probability, Double.MIN_NORMAL));
  }

  /** Two digits of the half-width when it begins with 1 or 2, else one. */
  static int decimals(Estimate estimate) {
    double halfWidth = (estimate.hi95() - estimate.lo95()) / 2;
    double size =
        Math.max(Math.abs(estimate.value()), Math.max(Math.abs(estimate.lo95()), estimate.hi95()));
    int most = size == 0 ? 0 : 4 - (int) Math.floor(Math.log10(size));
    if (halfWidth <= 0) {
      return Math.max(0, Math.min(MOST_DECIMALS, most - 1));
    }
    int leading = (int) Math.floor(Math.log10(halfWidth));
    int wanted = halfWidth / Math.pow(10, leading) < 2.95 ? 1 - leading : -leading;
    return Math.max(0, Math.min(MOST_DECIMALS, Math.min(wanted, most)));
  }

  private static int clampTo2(int decimals) {
    return Math.max(0, Math.min(2, decimals));
  }
}
