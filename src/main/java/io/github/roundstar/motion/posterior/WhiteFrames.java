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

  private final List<OfRun> runs = new ArrayList<>();
  private int steps;
  private double logDeterminant;

  WhiteFrames(AxisModel model) {
    for (ObservedRun run : model.runs()) {
      runs.add(new OfRun(run));
    }
  }

  /** One run: its columns as they are, and room for them made white. */
  private static final class OfRun {
    final ObservedRun run;
    final double[][] plain;
    final double[][] steady;
    final int columns;
    double[][] white;
    double[][] pushed;
    Whitening whitening;

    OfRun(ObservedRun run) {
      this.run = run;
      columns = run.columns().length;
      plain = Arrays.copyOf(run.columns(), columns + 1);
      plain[columns] = run.arcsec();
      steady = new double[columns + 1][columns + 1];
    }

    void filter(double ratio, double memory) {
      whitening = Whitening.of(run.seconds(), run.startsPiece(), ratio * run.walkShare(), memory);
      if (white == null) {
        white = new double[plain.length][whitening.size()];
        pushed = new double[Pushes.COLUMNS][whitening.size()];
      }
      whitening.apply(plain, white);
      for (double[] row : steady) {
        Arrays.fill(row, 0);
      }
      add(white, white, whitening.size(), true, steady);
    }

    /** Steady columns, pushes, offsets: products below the diagonal. */
    double[][] products(double[][] pushes) {
      int count = whitening.size();
      whitening.apply(pushes, pushed);
      double[][] own = new double[Pushes.COLUMNS][Pushes.COLUMNS];
      add(pushed, pushed, count, true, own);
      double[][] across = new double[columns + 1][Pushes.COLUMNS];
      add(white, pushed, count, false, across);
      double[][] all = new double[columns + Pushes.COLUMNS + 1][columns + Pushes.COLUMNS + 1];
      for (int i = 0; i < columns; i++) {
        System.arraycopy(steady[i], 0, all[i], 0, i + 1);
      }
      int last = columns + Pushes.COLUMNS;
      for (int d = 0; d < Pushes.COLUMNS; d++) {
        for (int i = 0; i < columns; i++) {
          all[columns + d][i] = across[i][d];
        }
        System.arraycopy(own[d], 0, all[columns + d], columns, d + 1);
        all[last][columns + d] = across[columns][d];
      }
      System.arraycopy(steady[columns], 0, all[last], 0, columns);
      all[last][last] = steady[columns][columns];
      return all;
    }
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
    for (OfRun run : runs) {
      run.filter(ratioPerSecond, memorySeconds);
      steps += run.whitening.size();
      logDeterminant += run.whitening.logDeterminant();
    }
  }

  /**
   * For each run the scalar products of all columns made white; the part below the diagonal is
   * filled.
   *
   * @param pushes for every run
   */
  double[][][] products(double[][][] pushes) {
    double[][][] products = new double[runs.size()][][];
    for (int r = 0; r < products.length; r++) {
      products[r] = runs.get(r).products(pushes[r]);
    }
    return products;
  }

  /** Adds products of columns a and b; of the same columns only those below the diagonal. */
  private static void add(double[][] a, double[][] b, int count, boolean same, double[][] sums) {
    for (int from = 0; from < count; from += CHUNK) {
      int to = Math.min(count, from + CHUNK);
      for (int i = 0; i < a.length; i += 2) {
        for (int j = 0; j <= (same ? i : b.length - 1); j += 2) {
          add(a, i, b, j, from, to, same, sums);
        }
      }
    }
  }

  /** Two columns by two at once: each value is read once for two products. */
  private static void add(
      double[][] a, int i, double[][] b, int j, int from, int to, boolean same, double[][] sums) {
    double[] a0 = a[i];
    double[] a1 = a[Math.min(i + 1, a.length - 1)];
    double[] b0 = b[j];
    double[] b1 = b[Math.min(j + 1, b.length - 1)];
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
    sums[i][j] += s00;
    boolean secondA = i + 1 < a.length;
    boolean secondB = j + 1 < b.length;
    if (secondB && !(same && i == j)) {
      sums[i][j + 1] += s01;
    }
    if (secondA) {
      sums[i + 1][j] += s10;
      if (secondB) {
        sums[i + 1][j + 1] += s11;
      }
    }
  }
}
