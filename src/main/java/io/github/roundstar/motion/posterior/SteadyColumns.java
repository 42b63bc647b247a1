package io.github.roundstar.motion.posterior;

import io.github.roundstar.motion.posterior.Priors.Movement;
import io.github.roundstar.motion.posterior.Priors.Scale;
import java.util.Arrays;
import java.util.List;

/**
 * Integrates the steady columns of all runs. Those in which sinusoids move come last, so that what
 * stays is taken out once for each noise and size of the mount, whatever the speed.
 */
final class SteadyColumns {
  private final int all;
  private final int staying;
  private final Prior[][] bySize;
  private final Prior[][] byMovement;

  SteadyColumns(AxisModel model) {
    all = model.columns();
    staying = all - model.moving();
    List<Scale> scales = model.priors().scales();
    List<Movement> movements = model.priors().movements();
    int runs = model.runs().size();
    bySize = new Prior[scales.size()][runs];
    byMovement = new Prior[movements.size()][runs];
    for (int r = 0; r < runs; r++) {
      double[] deviations = model.runs().get(r).deviations();
      for (int g = 0; g < bySize.length; g++) {
        double[] sized = Arrays.copyOf(deviations, staying);
        for (int i = 0; i < model.scaled(); i++) {
          sized[i] = Priors.ofSize(i, sized[i], scales.get(g).factor());
        }
        bySize[g][r] = Prior.of(sized);
      }
      for (int m = 0; m < byMovement.length; m++) {
        double walk = movements.get(m).arcsecPerRootTurn();
        double[] moved = walk > 0 ? Arrays.copyOfRange(deviations, staying, all) : new double[0];
        byMovement[m][r] = Prior.of(Arrays.stream(moved).map(d -> d * walk).toArray());
      }
    }
  }

  /** Precisions of some columns beforehand, and half the logarithm of their product. */
  private record Prior(double[] precisions, double log) {
    static Prior of(double[] deviations) {
      double log = 0;
      double[] precisions = new double[deviations.length];
      for (int i = 0; i < precisions.length; i++) {
        log -= Math.log(deviations[i]);
        precisions[i] = 1 / (deviations[i] * deviations[i]);
      }
      return new Prior(precisions, log);
    }
  }

  /**
   * A run's steady columns for one noise, size and movement: L of their precision, and L^-1 of
   * their products with pushes and offsets over the noise's variance.
   */
  record Steady(Cholesky lower, double[][] reduced, int columns) {}

  /**
   * What is left of all runs.
   *
   * @param rows of each run: columns, pushes and offsets, the first of them taken out
   * @param log logarithm of what the integral is multiplied by
   */
  record Left(double[][][] rows, int columns, double log) {
    /** What is left of pushes and offsets, summed over the runs. */
    double[][] pushed() {
      int q = Pushes.COLUMNS + 1;
      double[][] sum = new double[q][q];
      for (double[][] of : rows) {
        int behind = of.length - q;
        for (int a = 0; a < q; a++) {
          for (int b = 0; b <= a; b++) {
            sum[a][b] += of[behind + a][behind + b];
            sum[b][a] = sum[a][b];
          }
        }
      }
      return sum;
    }

    Steady[] steady() {
      return Arrays.stream(rows)
          .map(
              of ->
                  new Steady(
                      Cholesky.of(Arrays.copyOf(of, columns)),
                      Arrays.copyOfRange(of, of.length - Pushes.COLUMNS - 1, of.length),
                      columns))
          .toArray(Steady[]::new);
    }
  }

  /**
   * Takes out what stays.
   *
   * @param products of each run's columns, pushes and offsets
   * @param unit one over the noise's variance
   * @param size index among the prior's
   */
  Left staying(double[][][] products, double unit, int size) {
    double[][][] rows = new double[products.length][][];
    double log = 0;
    for (int r = 0; r < rows.length; r++) {
      double[][] of = products[r];
      double[][] scaled = new double[of.length][];
      for (int i = 0; i < scaled.length; i++) {
        scaled[i] = new double[i + 1];
        for (int j = 0; j <= i; j++) {
          scaled[i][j] = unit * of[i][j];
        }
      }
      rows[r] = scaled;
      log += takeOut(scaled, 0, bySize[size][r]);
    }
    return new Left(rows, staying, log);
  }

  /** Takes out what moves as well. */
  Left moving(Left before, int movement) {
    if (byMovement[movement][0].precisions().length == 0) {
      return before;
    }
    double[][][] rows = new double[before.rows().length][][];
    double log = before.log();
    for (int r = 0; r < rows.length; r++) {
      rows[r] = before.rows()[r].clone();
      for (int i = staying; i < rows[r].length; i++) {
        rows[r][i] = rows[r][i].clone();
      }
      log += takeOut(rows[r], staying, byMovement[movement][r]);
    }
    return new Left(rows, all, log);
  }

  private static double takeOut(double[][] rows, int from, Prior prior) {
    int count = prior.precisions().length;
    for (int i = 0; i < count; i++) {
      rows[from + i][from + i] += prior.precisions()[i];
    }
    Cholesky.eliminate(rows, from, from + count);
    double log = prior.log();
    for (int i = from; i < from + count; i++) {
      log -= Math.log(rows[i][i]);
    }
    return log;
  }
}
