package io.github.roundstar.ingest.layout.evidence;

import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** How one series of numbers goes with another, such as pulses with the offsets they answer. */
public final class Relation {
  private static final int FEWEST = 3;
  private static final int FEWEST_PULSES = 8;
  private static final int ENOUGH = 3000;
  private final SimpleRegression line = new SimpleRegression();

  private Relation() {}

  /**
   * Over the rows that have both.
   *
   * @param size rows
   * @param lag how many rows earlier the other stands; negative for later
   * @param taken rows that are looked at
   * @param most pairs that are enough
   */
  public static Relation of(
      IntToDoubleFunction one,
      IntToDoubleFunction other,
      int size,
      int lag,
      IntPredicate taken,
      int most) {
    Relation relation = new Relation();
    int last = size + Math.min(0, lag);
    for (int i = Math.max(0, lag); i < last && relation.line.getN() < most; i++) {
      double y = one.applyAsDouble(i);
      double x = other.applyAsDouble(i - lag);
      if (Double.isFinite(x) && Double.isFinite(y) && taken.test(i)) {
        relation.line.addData(x, y);
      }
    }
    return relation;
  }

  /** Pairs of numbers. */
  public long pairs() {
    return line.getN();
  }

  /** Correlation; 0 where it cannot be had. */
  public double correlation() {
    double r = line.getR();
    return line.getN() >= FEWEST && Double.isFinite(r) ? r : 0;
  }

  /** Change of the one for each unit of the other. */
  public double slope() {
    return line.getSlope();
  }

  /** Scatter of the other. */
  public double otherScatter() {
    return Math.sqrt(line.getXSumSquares() / Math.max(1, line.getN() - 1));
  }

  /** Correlation of one series with the other, {@code lag} rows earlier; 0 for too few pairs. */
  public static double correlation(double[] one, double[] other, int lag, IntPredicate taken) {
    Relation pairs = of(i -> one[i], i -> other[i], one.length, lag, taken, ENOUGH);
    return pairs.pairs() < FEWEST_PULSES ? 0 : pairs.correlation();
  }
}
