package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The path is the one that a dense inversion of the whole model gives, errors included. */
class WanderPathTest {
  private static final WanderNoise MODEL = new WanderNoise(0.09, 0.4);

  /** Forty uneven samples in three pieces, some missing. */
  private static final double[] SECONDS = DenseWander.example(0.4).seconds();

  private static final boolean[] STARTS = DenseWander.example(0.4).starts();

  private static double[] data() {
    double[] data = DenseWander.example(0.4).data();
    for (int missing : new int[] {0, 5, 6, 7, 13, 28, 39}) {
      data[missing] = Double.NaN;
    }
    return data;
  }

  /**
   * Posterior of the local level model by its precision matrix: one over the noise for each sample,
   * one over the walk's variance for each step inside a piece (Rue and Held, Gaussian Markov Random
   * Fields, 2005, section 3.3; from memory), inverted by Commons Math.
   */
  private static RealMatrix precision(double[] data) {
    RealMatrix precision = new Array2DRowRealMatrix(data.length, data.length);
    for (int i = 0; i < data.length; i++) {
      precision.addToEntry(i, i, Double.isNaN(data[i]) ? 0 : 1 / MODEL.noiseVariance());
      if (i > 0 && !STARTS[i]) {
        double walk =
            MODEL.noiseVariance() * MODEL.ratioPerSecond() * (SECONDS[i] - SECONDS[i - 1]);
        precision.addToEntry(i, i, 1 / walk);
        precision.addToEntry(i - 1, i - 1, 1 / walk);
        precision.addToEntry(i, i - 1, -1 / walk);
        precision.addToEntry(i - 1, i, -1 / walk);
      }
    }
    return precision;
  }

  @Test
  @Tag("identity")
  void pathAndItsErrorsAreTheDenseOnes() {
    double[] data = data();
    RealMatrix covariance = new LUDecomposition(precision(data)).getSolver().getInverse();
    RealVector right = new ArrayRealVector(data.length);
    for (int i = 0; i < data.length; i++) {
      right.setEntry(i, Double.isNaN(data[i]) ? 0 : data[i] / MODEL.noiseVariance());
    }
    RealVector level = covariance.operate(right);
    WanderPath path = WanderPath.of(SECONDS, STARTS, data, MODEL);
    for (int i = 0; i < data.length; i++) {
      assertThat(path.level(i)).isCloseTo(level.getEntry(i), within(1e-9));
      assertThat(path.variance(i)).isCloseTo(covariance.getEntry(i, i), within(1e-9));
      double shared = 1;
      for (int later = i + 1; later < data.length; later++) {
        shared *= path.carry(later - 1);
        assertThat(shared * path.variance(later))
            .isCloseTo(covariance.getEntry(i, later), within(1e-9));
      }
    }
  }

  /** As above, the noise's own covariance matrix inverted; all samples measured. */
  @Test
  @Tag("identity")
  void pathThroughNoiseWithAMemoryIsTheDenseOne() {
    DenseWander dense = DenseWander.example(0.4).remembering(2);
    double[] data = dense.data();
    int n = data.length;
    RealMatrix noise = new Array2DRowRealMatrix(n, n);
    RealMatrix walks = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        noise.setEntry(i, j, 0.09 * dense.noise(i, j));
      }
      if (!STARTS[i]) {
        double weight = 1 / (0.09 * 0.4 * (SECONDS[i] - SECONDS[i - 1]));
        walks.addToEntry(i, i, weight);
        walks.addToEntry(i - 1, i - 1, weight);
        walks.addToEntry(i, i - 1, -weight);
        walks.addToEntry(i - 1, i, -weight);
      }
    }
    RealMatrix weights = new LUDecomposition(noise).getSolver().getInverse();
    RealMatrix covariance = new LUDecomposition(walks.add(weights)).getSolver().getInverse();
    RealVector level = covariance.operate(weights.operate(new ArrayRealVector(data)));
    WanderPath path = WanderPath.of(SECONDS, STARTS, data, new WanderNoise(0.09, 0.4, 2));
    for (int i = 0; i < n; i++) {
      assertThat(path.level(i)).isCloseTo(level.getEntry(i), within(1e-9));
      assertThat(path.variance(i)).isCloseTo(covariance.getEntry(i, i), within(1e-9));
      if (i > 0) {
        assertThat(path.carry(i - 1) * path.variance(i))
            .isCloseTo(covariance.getEntry(i - 1, i), within(1e-9));
      }
    }
  }

  /**
   * Far from both ends the error of a smoothed level is, with m = q / R per step: m / sqrt(m^2 + 4
   * m) of the noise variance, the middle element of the inverse of an endless precision matrix.
   */
  @Test
  @Tag("identity")
  void errorFarFromTheEndsIsTheClosedForm() {
    double[] seconds = new double[401];
    Arrays.setAll(seconds, i -> i);
    WanderPath path = WanderPath.of(seconds, new boolean[401], new double[401], MODEL);
    double m = MODEL.ratioPerSecond();
    assertThat(path.variance(200) / MODEL.noiseVariance())
        .isCloseTo(m / Math.sqrt(m * m + 4 * m), within(1e-12));
  }

  @Test
  void errorGrowsWhereNothingWasMeasured() {
    double[] seconds = {0, 1, 2, 3, 4, 5, 6};
    double[] data = {0, 0, Double.NaN, Double.NaN, Double.NaN, 0, 0};
    WanderPath path = WanderPath.of(seconds, new boolean[7], data, MODEL);
    assertThat(path.variance(3)).isGreaterThan(path.variance(2));
    assertThat(path.variance(2)).isGreaterThan(path.variance(1));
  }

  @Test
  void pieceWithoutASampleIsNotKnown() {
    double[] data = {1, 1, Double.NaN, 1};
    boolean[] starts = {true, false, true, true};
    WanderPath path = WanderPath.of(new double[] {0, 1, 2, 3}, starts, data, MODEL);
    assertThat(path.size()).isEqualTo(4);
    assertThat(path.variance(2)).isInfinite();
    assertThat(path.level(2)).isZero();
  }
}
