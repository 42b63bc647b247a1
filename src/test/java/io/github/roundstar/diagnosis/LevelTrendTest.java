package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("identity")
class LevelTrendTest {
  private static final int BLOCKS = 36;

  @ParameterizedTest(name = "walk over the night of {0} times a block's scatter")
  @CsvSource({"0", "1", "3", "10"})
  void aStepIsCoveredWhateverTheLevelDoesByItself(double walk) {
    int covered = 0;
    int nights = 400;
    for (int seed = 1; seed <= nights; seed++) {
      double[] level = level(seed, walk);
      double step = 0.7;
      double[] after = new double[BLOCKS];
      Arrays.fill(after, BLOCKS / 3, BLOCKS, 1);
      for (int i = 0; i < BLOCKS; i++) {
        level[i] += step * after[i];
      }
      covered += first(level, after).covers(step) ? 1 : 0;
    }
    // 95 % of 400 is 380 with a standard deviation of 4.4.
    assertThat(covered).as("covered of %d", nights).isBetween(366, 398);
  }

  @Test
  void whatWalksAsFarAsItStepsIsNoStep() {
    int found = 0;
    for (int seed = 1; seed <= 200; seed++) {
      double[] after = new double[BLOCKS];
      Arrays.fill(after, BLOCKS / 2, BLOCKS, 1);
      Estimate step = first(level(seed, 30), after);
      found += step.covers(0) ? 0 : 1;
    }
    assertThat(found).isLessThanOrEqualTo(18);
  }

  /** The outside: ordinary least squares of Commons Math, which knows of no walk. */
  @Test
  void withoutAWalkItIsTheSlopeOfOrdinaryLeastSquares() {
    double[] slope = new double[BLOCKS];
    double[] level = level(7, 0);
    SimpleRegression plain = new SimpleRegression();
    for (int i = 0; i < BLOCKS; i++) {
      slope[i] = Math.sin(i);
      level[i] += 2 * slope[i];
      plain.addData(slope[i], level[i]);
    }
    assertThat(first(level, slope).value())
        .isBetween(
            plain.getSlope() - 0.3 * plain.getSlopeStdErr(),
            plain.getSlope() + 0.3 * plain.getSlopeStdErr());
  }

  @Test
  void tooFewBlocksTellNothing() {
    double[] seconds = {0, 1, 2, 3, 4};
    double[] ones = {1, 1, 1, 1, 1};
    assertThat(
            LevelTrend.first(
                seconds, new double[] {1, 2, 1, 3, 1}, new double[][] {seconds, ones}, 2))
        .isEmpty();
  }

  private static double[] level(long seed, double walk) {
    Random random = new Random(seed);
    double[] level = new double[BLOCKS];
    double at = 0;
    for (int i = 0; i < BLOCKS; i++) {
      at += Math.sqrt(walk / BLOCKS) * random.nextGaussian();
      level[i] = at + random.nextGaussian();
    }
    return level;
  }

  private static Estimate first(double[] level, double[] column) {
    double[] seconds = new double[BLOCKS];
    double[] ones = new double[BLOCKS];
    Arrays.setAll(seconds, i -> 300 * i);
    Arrays.fill(ones, 1);
    return LevelTrend.first(seconds, level, new double[][] {column, ones}, Estimate.SIGMAS_95)
        .orElseThrow();
  }
}
