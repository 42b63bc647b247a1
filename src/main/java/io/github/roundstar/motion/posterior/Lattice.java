package io.github.roundstar.motion.posterior;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.stream.IntStream;

/**
 * Points of an even lattice where a density has weight, found by spreading from its peaks to
 * neighbours, the heaviest first. All peaks share the lattice, so none is counted twice. An even
 * sum over a smooth density that falls to nothing on all sides converges faster than any power of
 * the step (Trefethen &amp; Weideman 2014, SIAM Review 56, 385).
 */
final class Lattice {
  /** How far below the cut a straight line must lead before a neighbour is not looked at. */
  private static final double SURELY = 1.5;

  private final Density density;
  private final double[] origin;
  private final double[][] steps;
  private final double cut;
  private final Map<List<Integer>, Point> points = new HashMap<>();
  private final PriorityQueue<Point> open =
      new PriorityQueue<>(Comparator.comparingDouble((Point p) -> -p.logDensity));
  private double highest = Double.NEGATIVE_INFINITY;
  private int evaluations;

  private Lattice(Density density, double[] origin, double[][] steps, double cut) {
    this.density = density;
    this.origin = origin;
    this.steps = steps;
    this.cut = cut;
  }

  /** Logarithm of a density in several dimensions, which need not be normal. */
  @FunctionalInterface
  interface Density {
    double at(double[] x);
  }

  /** A point and the logarithm of the density there. */
  record Point(double[] x, double logDensity, int[] index) {}

  /**
   * Lays the points.
   *
   * @param seeds places at or near every peak; the first is the origin
   * @param steps one vector for each direction of the lattice
   * @param cut as in {@link Resolution}
   * @param most how many points at most
   * @return nothing where they are too many: the density is wide beside such steps
   */
  static Optional<List<Point>> over(
      Density density, List<double[]> seeds, double[][] steps, double cut, int most) {
    Lattice lattice = new Lattice(density, seeds.get(0), steps, cut);
    for (double[] seed : seeds) {
      lattice.visit(lattice.nearest(seed));
    }
    while (!lattice.open.isEmpty()) {
      if (lattice.evaluations > most) {
        return Optional.empty();
      }
      lattice.spread(lattice.open.poll());
    }
    List<Point> kept = new ArrayList<>();
    for (Point point : lattice.points.values()) {
      if (point.logDensity > lattice.highest - cut) {
        kept.add(point);
      }
    }
    // A map has no order that would be the same every time.
    kept.sort(
        Comparator.comparing(
            (Point p) -> IntStream.of(p.index).boxed().toList(),
            (a, b) -> {
              for (int d = 0; d < a.size(); d++) {
                if (!a.get(d).equals(b.get(d))) {
                  return a.get(d) - b.get(d);
                }
              }
              return 0;
            }));
    return Optional.of(kept);
  }

  private void visit(int[] index) {
    List<Integer> key = IntStream.of(index).boxed().toList();
    if (points.containsKey(key)) {
      return;
    }
    double[] x = origin.clone();
    for (int d = 0; d < index.length; d++) {
      for (int j = 0; j < x.length; j++) {
        x[j] += index[d] * steps[d][j];
      }
    }
    double value = density.at(x);
    evaluations++;
    Point point = new Point(x, value, index);
    points.put(key, point);
    if (value > highest) {
      highest = value;
    }
    if (value > Double.NEGATIVE_INFINITY) {
      open.add(point);
    }
  }

  private void spread(Point point) {
    if (point.logDensity < highest - cut) {
      return;
    }
    for (int d = 0; d < point.index.length; d++) {
      for (int side = -1; side <= 1; side += 2) {
        if (worth(point, d, side)) {
          int[] next = point.index.clone();
          next[d] += side;
          visit(next);
        }
      }
    }
  }

  /**
   * Whether the neighbour may have weight: where the point on the other side is known, the density
   * is taken to fall no slower than by a straight line.
   */
  private boolean worth(Point point, int d, int side) {
    int[] behind = point.index.clone();
    behind[d] -= side;
    Point other = points.get(IntStream.of(behind).boxed().toList());
    return other == null
        || 2 * point.logDensity - other.logDensity > highest - SURELY * cut
        || point.logDensity >= other.logDensity;
  }

  private int[] nearest(double[] seed) {
    int n = steps.length;
    double[][] columns = new double[n][n];
    double[] right = new double[n];
    for (int j = 0; j < n; j++) {
      right[j] = seed[j] - origin[j];
      for (int d = 0; d < n; d++) {
        columns[j][d] = steps[d][j];
      }
    }
    double[] solved = Cholesky.solveAny(columns, right);
    int[] index = new int[n];
    for (int d = 0; d < n; d++) {
      index[d] = (int) Math.rint(solved[d]);
    }
    return index;
  }
}
