package io.github.roundstar.report.words;

import io.github.roundstar.model.Decimals;
import io.github.roundstar.model.Estimate;

/** Numbers as a report writes them. */
public final class Numbers {
  /** Stands where a figure is null. */
  public static final String NOT_KNOWN = "not known";

  private static final int MOST_DECIMALS = 4;
  private static final char MINUS = '\u2212';

  private Numbers() {}

  /** A figure without interval; one that is nearly nothing is not zero. */
  public static String plain(double value) {
    double size = Math.abs(value);
    return size > 0 && size < 0.0005
        ? (value < 0 ? "above " + MINUS : "below ") + "0.0005"
        : fixed(value, Decimals.of(value));
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
    return signed(Decimals.text(value, decimals));
  }

  /** Numbers of a sentence with the sign that pages write. */
  public static String signed(String numbers) {
    return numbers.replace('-', MINUS);
  }

  /** Best value of an estimate, as many digits as its interval supports. */
  public static String value(Estimate estimate) {
    return estimate == null ? NOT_KNOWN : fixed(estimate.value(), Decimals.of(estimate));
  }

  /** {@code (1.71 .. 1.98)}; empty without an estimate. */
  public static String interval(Estimate estimate) {
    if (estimate == null) {
      return "";
    }
    return interval(estimate, Decimals.of(estimate));
  }

  /** The same with so many decimals. */
  public static String interval(Estimate estimate, int decimals) {
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
}
