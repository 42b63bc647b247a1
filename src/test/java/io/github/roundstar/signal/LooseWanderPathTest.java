package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The smoother against generalised least squares with dense matrices. */
@Tag("identity")
class LooseWanderPathTest {
  private static final double R = 0.09;
  private static final double Q = 0.01;

  /**
   * The smoothed level minimises the sum of squared noise over R and of squared steps over their
   * variance; its covariance is the inverse of the normal matrix.
   */
  @Test
  void levelAndVarianceAreThoseOfTheNormalEquations() {
    int n = 30;
    Random random = new Random(7);
    double[] seconds = new double[n];
    double[] data = new double[n];
    double[] loose = new double[n];
    boolean[] starts = new boolean[n];
    starts[0] = true;
    starts[18] = true;
    loose[9] = 5;
    for (int i = 0; i < n; i++) {
      seconds[i] = (i == 0 ? 0 : seconds[i - 1]) + 1 + random.nextDouble();
      data[i] = random.nextGaussian();
    }
    RealMatrix normal = new Array2DRowRealMatrix(n, n);
    RealMatrix right = new Array2DRowRealMatrix(n, 1);
    for (int i = 0; i < n; i++) {
      normal.addToEntry(i, i, 1 / R);
      right.setEntry(i, 0, data[i] / R);
      if (!starts[i]) {
        double weight = 1 / (Q * (seconds[i] - seconds[i - 1]) + R * loose[i]);
        normal.addToEntry(i, i, weight);
        normal.addToEntry(i - 1, i - 1, weight);
        normal.addToEntry(i, i - 1, -weight);
        normal.addToEntry(i - 1, i, -weight);
      }
    }
    RealMatrix covariance = new LUDecomposition(normal).getSolver().getInverse();
    RealMatrix expected = covariance.multiply(right);

    WanderPath path = WanderPath.of(seconds, starts, data, new WanderNoise(R, Q / R), loose);
    for (int i = 0; i < n; i++) {
      assertThat(path.level(i)).isCloseTo(expected.getEntry(i, 0), within(1e-10));
      assertThat(path.variance(i)).isCloseTo(covariance.getEntry(i, i), within(1e-10));
    }
  }
}
