package io.github.roundstar.motion.posterior;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Nodes and weights of Gauss and Legendre on 0 to 1.
 *
 * @see "Press et al., Numerical Recipes, 3rd ed. (2007), section 4.6.1"
 */
final class GaussLegendre {
  private static final Map<Integer, GaussLegendre> KNOWN = new ConcurrentHashMap<>();

  private final double[] nodes;
  private final double[] weights;
  private final double[] below;

  private GaussLegendre(int n) {
    nodes = new double[n];
    weights = new double[n];
    below = new double[n + 1];
    for (int i = 0; i < n; i++) {
      double z = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
      double slope = 1;
      for (int newton = 0; newton < 100; newton++) {
        double p1 = 1;
        double p2 = 0;
        for (int j = 0; j < n; j++) {
          double p3 = p2;
          p2 = p1;
          p1 = ((2 * j + 1) * z * p2 - j * p3) / (j + 1);
        }
        slope = n * (z * p1 - p2) / (z * z - 1);
        double step = p1 / slope;
        z -= step;
        if (Math.abs(step) < 1e-15) {
          break;
        }
      }
      nodes[i] = (1 - z) / 2;
      weights[i] = 1 / ((1 - z * z) * slope * slope);
      below[i + 1] = Math.min(1, below[i] + weights[i]);
    }
  }

  static GaussLegendre of(int n) {
    return KNOWN.computeIfAbsent(n, GaussLegendre::new);
  }

  int size() {
    return nodes.length;
  }

  double node(int i, double from, double to) {
    return from + (to - from) * nodes[i];
  }

  /** Where the part of an interval begins that node {@code i} stands for. */
  double edge(int i, double from, double to) {
    return from + (to - from) * below[i];
  }

  /** Weight on an interval of unit length. */
  double weight(int i) {
    return weights[i];
  }
}
