package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Level and scatter agree with those that Commons Math gives of what clipping leaves. */
class ClippedTest {
  @Tag("identity")
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 819, 1024})
  void levelAndScatterAreThoseOfWhatIsLeft(int size) {
    Random random = new Random(size);
    float[] values = new float[size];
    for (int i = 0; i < size; i++) {
      // Whole numbers, so that many are equal; every twentieth is on a star.
      values[i] = Math.round(500 + 4 * random.nextGaussian() + (i % 20 == 19 ? 300 : 0));
    }
    float[] before = values.clone();
    Clipped clipped = Clipped.of(values);
    assertThat(values).isEqualTo(before);
    DescriptiveStatistics left = clipped(values);
    double median = left.getSortedValues()[(int) left.getN() / 2];
    double square = left.getPopulationVariance() + Math.pow(left.getMean() - median, 2);
    assertThat(clipped.sigma()).isCloseTo(Math.sqrt(square), within(1e-9));
    boolean skewed = Math.abs(left.getMean() - median) > 0.3 * clipped.sigma();
    double level = skewed ? median : 2.5 * median - 1.5 * left.getMean();
    assertThat(clipped.level()).isCloseTo(level, within(1e-9));
  }

  private static DescriptiveStatistics clipped(float[] values) {
    DescriptiveStatistics all = new DescriptiveStatistics();
    for (float value : values) {
      all.addValue(value);
    }
    double median = all.getSortedValues()[(int) all.getN() / 2];
    double sigma = Math.sqrt(all.getPopulationVariance() + Math.pow(all.getMean() - median, 2));
    float[] kept = new float[values.length];
    int n = 0;
    for (float value : values) {
      if (Math.abs(value - median) <= 3 * sigma) {
        kept[n++] = value;
      }
    }
    return n == values.length ? all : clipped(java.util.Arrays.copyOf(kept, n));
  }

  @Test
  void ofNothingThereIsNothing() {
    assertThat(Clipped.of(new float[0]).sigma()).isNaN();
    assertThat(Clipped.of(new float[0]).level()).isNaN();
  }
}
