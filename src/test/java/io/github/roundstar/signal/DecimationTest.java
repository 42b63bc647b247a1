package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A thinned line covers the same pixels as the whole one. */
class DecimationTest {
  @Test
  void firstLowestHighestAndLastStayInOrder() {
    double[] x = {0, 1, 2, 3, 4, 5, 6, 7, 8, 10};
    double[] y = {1, 2, 9, 3, 2, -7, 0, 1, 1, 5};
    Decimation line = Decimation.of(x, y, 1);
    assertThat(line.size()).isEqualTo(4);
    assertThat(new double[] {line.x(0), line.x(1), line.x(2), line.x(3)})
        .containsExactly(0, 2, 5, 10);
    assertThat(new double[] {line.y(0), line.y(1), line.y(2), line.y(3)})
        .containsExactly(1, 9, -7, 5);
  }

  @Test
  void shortLinesAreKeptWhole() {
    assertThat(Decimation.of(new double[] {0, 1, 2}, new double[] {1, 0, 2}, 50).size())
        .isEqualTo(3);
    assertThat(Decimation.of(new double[0], new double[0], 50).size()).isZero();
  }

  @Test
  @Tag("identity")
  void everyColumnKeepsItsExtremes() {
    Random random = new Random(6);
    double[] x = new double[5000];
    double[] y = new double[5000];
    for (int i = 0; i < x.length; i++) {
      x[i] = i == 0 ? 0 : x[i - 1] + random.nextDouble();
      y[i] = random.nextGaussian();
    }
    Decimation line = Decimation.of(x, y, 100);
    double[] thinX = new double[line.size()];
    double[] thinY = new double[line.size()];
    for (int i = 0; i < line.size(); i++) {
      thinX[i] = line.x(i);
      thinY[i] = line.y(i);
    }
    assertThat(line.size()).isLessThanOrEqualTo(400);
    Envelope whole = Envelope.of(x, y, 100);
    Envelope thin = Envelope.of(thinX, thinY, 100);
    assertThat(thin.columns()).isEqualTo(whole.columns());
    for (int i = 0; i < whole.columns(); i++) {
      assertThat(thin.min(i)).isEqualTo(whole.min(i));
      assertThat(thin.max(i)).isEqualTo(whole.max(i));
    }
  }
}
