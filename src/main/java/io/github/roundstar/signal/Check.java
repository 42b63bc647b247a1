package io.github.roundstar.signal;

/** Argument checks that name the offending value and its index. */
final class Check {
  private Check() {}

  static void finite(String name, double[] values) {
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException(name + " [" + i + "] = " + values[i] + " is not finite");
      }
    }
  }

  static void sameLength(String name, double[] values, int expected) {
    if (values.length != expected) {
      throw new IllegalArgumentException(name + " has " + values.length + " of " + expected);
    }
  }

  static void atLeast(String name, int value, int least) {
    if (value < least) {
      throw new IllegalArgumentException(name + " is " + value + ", must be at least " + least);
    }
  }

  static void positive(String name, double value) {
    if (!(value > 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException(name + " is " + value + ", must be positive");
    }
  }
}
