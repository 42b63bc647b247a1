package io.github.roundstar.motion.posterior;

import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The frames of all runs, made white for one wander and one memory at a time, and the scalar
 * products of their columns: first the steady columns, then the {@link Pushes}, last the offsets.
 */
final class WhiteFrames {
  /** Frames taken together, so that all columns stay in the fastest memory. */
  private static final int CHUNK = 512;

  private final AxisModel model;
  private final List<OfRun> runs = new ArrayList<>();
  private final double[][] steady;
  private int steps;
  private double logDeterminant;

  WhiteFrames(AxisModel model) {
    this.model = model;
    for (ObservedRun run : model.runs()) {
      runs.add(new OfRun(run));
    }
    steady = new double[size()][size()];
  }

  /** One run: its columns as they are, and room for them made white. */
  private final class OfRun {
    final ObservedRun run;
    final double[][] plain;
    final int[] place;
    double[][] white;
    double[][] pushed;
    Whitening whitening;

    OfRun(ObservedRun run) {
      this.run = run;
      int[] present = new int[model.columns() + 1];
      int count = 0;
      for (int j = 0; j < model.columns(); j++) {
        if (run.columns()[j] != null) {
          present[count++] = j;
        }
      }
      present[count++] = size() - 1;
      place = Arrays.copyOf(present, count);
      plain = new double[count][];
      for (int a = 0; a < count - 1; a++) {
        plain[a] = run.columns()[place[a]];
      }
      plain[count - 1] = run.arcsec();
    }

    void filter(double ratio, double memory) {
      whitening = Whitening.of(run.seconds(), run.startsPiece(), ratio, memory);
      if (white == null) {
        white = new double[plain.length][whitening.size()];
        pushed = new double[Pushes.COLUMNS][whitening.size()];
      }
      whitening.apply(plain, white);
    }
  }

  /** Number of columns of {@link #products}. */
  int size() {
    return model.columns() + Pushes.COLUMNS + 1;
  }

  /** Number of white steps. */
  int steps() {
    return steps;
  }

  /** Logarithm of the determinant of the steps' covariance over that of the noise. */
  double logDeterminant() {
    return logDeterminant;
  }

  /** Takes a wander and a memory. */
  void filter(double ratioPerSecond, double memorySeconds) {
    steps = 0;
    logDeterminant = 0;
    for (double[] row : steady) {
      Arrays.fill(row, 0);
    }
    for (OfRun run : runs) {
      run.filter(ratioPerSecond, memorySeconds);
      steps += run.whitening.size();
      logDeterminant += run.whitening.logDeterminant();
      add(run.white, run.place, run.white, run.place, run.whitening.size(), true, steady);
    }
  }

  /**
   * Scalar products of all columns made white; the part below the diagonal is filled.
   *
   * @param pushes for every run
   */
  double[][] products(double[][][] pushes) {
    double[][] all = new double[size()][];
    for (int a = 0; a < all.length; a++) {
      all[a] = steady[a].clone();
    }
    int first = model.columns();
    int[] place = new int[Pushes.COLUMNS];
    for (int d = 0; d < place.length; d++) {
      place[d] = first + d;
    }
    for (int r = 0; r < runs.size(); r++) {
      OfRun run = runs.get(r);
      int count = run.whitening.size();
      run.whitening.apply(pushes[r], run.pushed);
      add(run.pushed, place, run.pushed, place, count, true, all);
      add(run.white, run.place, run.pushed, place, count, false, all);
    }
    return all;
  }

  /** Adds products of columns a and b, below the diagonal of where they stand. */
  private static void add(
      double[][] a,
      int[] placeA,
      double[][] b,
      int[] placeB,
      int count,
      boolean same,
      double[][] sums) {
    for (int from = 0; from < count; from += CHUNK) {
      int to = Math.min(count, from + CHUNK);
      for (int i = 0; i < a.length; i += 2) {
        int second = Math.min(i + 1, a.length - 1);
        for (int j = 0; j <= (same ? i : b.length - 1); j += 2) {
          int other = Math.min(j + 1, b.length - 1);
          add(a[i], a[second], b[j], b[other], from, to, sums, placeA, placeB, i, second, j, other);
        }
      }
    }
  }

  private static void add(
      double[] a0,
      double[] a1,
      double[] b0,
      double[] b1,
      int from,
      int to,
      double[][] sums,
      int[] placeA,
      int[] placeB,
      int i,
      int second,
      int j,
      int other) {
    double s00 = 0;
    double s01 = 0;
    double s10 = 0;
    double s11 = 0;
    for (int t = from; t < to; t++) {
      double x0 = a0[t];
      double x1 = a1[t];
      double y0 = b0[t];
      double y1 = b1[t];
      s00 += x0 * y0;
      s01 += x0 * y1;
      s10 += x1 * y0;
      s11 += x1 * y1;
    }
    put(sums, placeA[i], placeB[j], s00);
    if (other > j && !(a0 == b0 && a1 == b1)) {
      put(sums, placeA[i], placeB[other], s01);
    }
    if (second > i) {
      put(sums, placeA[second], placeB[j], s10);
      if (other > j) {
        put(sums, placeA[second], placeB[other], s11);
      }
    }
  }

  private static void put(double[][] sums, int a, int b, double value) {
    sums[Math.max(a, b)][Math.min(a, b)] += value;
  }
}
