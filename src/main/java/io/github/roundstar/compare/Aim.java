package io.github.roundstar.compare;

import java.util.Locale;

/**
 * What would be better.
 *
 * @param kind lower, higher or nearer to a target
 * @param target in the figure's unit; 0 unless nearer is better
 */
record Aim(Kind kind, double target) {
  enum Kind {
    LOWER,
    HIGHER,
    NEARER
  }

  static final Aim LOWER = new Aim(Kind.LOWER, 0);
  static final Aim HIGHER = new Aim(Kind.HIGHER, 0);

  static Aim nearer(double target) {
    return new Aim(Kind.NEARER, target);
  }

  /** The value to compare: the distance from the target where there is one. */
  double compared(double value) {
    return kind == Kind.NEARER ? Math.abs(value - target) : value;
  }

  boolean improves(double change) {
    return kind == Kind.HIGHER ? change > 0 : change < 0;
  }

  String words(String unit) {
    return switch (kind) {
      case LOWER -> "lower";
      case HIGHER -> "higher";
      case NEARER -> String.format(Locale.ROOT, "nearer to %.0f %s", target, unit).strip();
    };
  }
}
