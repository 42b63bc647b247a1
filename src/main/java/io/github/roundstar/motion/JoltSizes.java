package io.github.roundstar.motion;

import java.util.List;

/**
 * How far each jolt took the star, once all of them are known and the quiet time is fitted: by the
 * places before and after it, clear of its flanks.
 */
final class JoltSizes {
  /** Samples on either side whose mean tells where the star was. */
  private static final int BESIDE = 6;

  private final double[] left;
  private final boolean[] touched;

  private JoltSizes(double[] left, boolean[] touched) {
    this.left = left;
    this.touched = touched;
  }

  /** The jolts with their sizes. */
  static List<Jolt> of(MotionSeries whole, double[][] columns, JoltFree quiet) {
    double[] left = quiet.left(whole, columns);
    boolean[] touched = new boolean[left.length];
    for (Jolt jolt : quiet.jolts()) {
      boolean lasting = jolt.shape() == Jolt.Shape.LASTING;
      for (int i = jolt.first(); i <= jolt.last(); i++) {
        touched[i] |= !lasting || i < jolt.last();
      }
    }
    JoltSizes sizes = new JoltSizes(left, touched);
    return quiet.jolts().stream().map(jolt -> jolt.withSize(sizes.size(jolt))).toList();
  }

  private double size(Jolt jolt) {
    double before = mean(jolt.first() - 1 - JoltFree.FLANK, -1);
    boolean lasting = jolt.shape() == Jolt.Shape.LASTING;
    double after = mean((lasting ? jolt.last() : jolt.last() + 1) + JoltFree.FLANK, 1);
    before = Double.isNaN(before) ? after : before;
    after = Double.isNaN(after) ? before : after;
    if (Double.isNaN(before)) {
      return jolt.sizeArcsec();
    }
    return lasting ? after - before : farthest(jolt, before, after);
  }

  /** Distance from the line between the means before and after. */
  private double farthest(Jolt jolt, double before, double after) {
    double farthest = 0;
    for (int i = jolt.first(); i <= jolt.last(); i++) {
      double share = (i - jolt.first() + 1.0) / (jolt.last() - jolt.first() + 2.0);
      double away = left[i] - (before + share * (after - before));
      farthest = Math.abs(away) > Math.abs(farthest) ? away : farthest;
    }
    return farthest;
  }

  /** Mean of the untouched samples from one on, in one direction of time; NaN without any. */
  private double mean(int from, int direction) {
    double sum = 0;
    int count = 0;
    for (int k = 0; k < BESIDE; k++) {
      int i = from + direction * k;
      if (i >= 0 && i < left.length && !touched[i]) {
        sum += left[i];
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }
}
