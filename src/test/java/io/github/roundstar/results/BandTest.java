package io.github.roundstar.results;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BandTest {
  private static final int SIZE = 1003;

  @Test
  void fewerColumnsKeepWhatSticksOutAndWhereNothingWas() {
    Random random = new Random(11);
    double[] x = IntStream.range(0, SIZE).asDoubleStream().toArray();
    double[] low = random.doubles(SIZE, -2, -1).toArray();
    double[] middle = random.doubles(SIZE, -1, 1).toArray();
    double[] high = random.doubles(SIZE, 1, 2).toArray();
    high[517] = 9;
    for (double[] column : new double[][] {low, middle, high}) {
      Arrays.fill(column, 700, 760, Double.NaN);
    }

    Band thin = Band.of(x, low, middle, high).thinned(100);

    assertThat(thin.size()).isBetween(80, 105);
    assertThat(IntStream.range(0, thin.size()).mapToDouble(thin::high).filter(v -> v == 9).count())
        .isEqualTo(1);
    for (int i = 0; i < thin.size(); i++) {
      boolean gap = thin.x(i) > 699.5 && thin.x(i) < 759.5;
      assertThat(Double.isNaN(thin.middle(i))).as("at %f", thin.x(i)).isEqualTo(gap);
      assertThat(gap || thin.low(i) <= thin.middle(i) && thin.middle(i) <= thin.high(i)).isTrue();
    }
  }

  @Test
  void aBandThatIsThinEnoughStaysAsItIs() {
    double[] one = {1, 2, 3};
    Band band = Band.of(one, one, one, one);

    assertThat(band.thinned(3)).isSameAs(band);
  }
}
