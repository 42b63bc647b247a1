package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class PortmanteauTest {
  private static double[] remembering(int size, double share, long seed) {
    Random random = new Random(seed);
    double[] values = new double[size];
    for (int i = 0; i < size; i++) {
      values[i] = random.nextGaussian() + (i == 0 ? 0 : share * values[i - 1]);
    }
    return values;
  }

  /** The sum by NumPy 2, its tail by scipy.stats.chi2 of SciPy 1.17. */
  @Tag("published")
  @Test
  void chanceIsThatOfAnotherLibrary() {
    double[] values = IntStream.range(0, 200).mapToDouble(i -> Math.sin((double) i * i)).toArray();
    Portmanteau test = Portmanteau.of(List.of(values), 2).orElseThrow();
    assertThat(test.chance()).isCloseTo(0.9844348633558679, within(1e-10));
    assertThat(test.lag()).isEqualTo(6);
    assertThat(test.correlation()).isCloseTo(-0.07357659349821359, within(1e-12));
  }

  /** Of 400 white series 20 stand below a chance of 0.05; 8 to 34 but for 1 in 500. */
  @Tag("identity")
  @Test
  void whiteResidualsSeldomLookOtherwise() {
    long below =
        IntStream.range(0, 400)
            .filter(
                seed ->
                    Portmanteau.of(
                                List.of(
                                    remembering(300, 0, seed), remembering(200, 0, 1000 + seed)),
                                0)
                            .orElseThrow()
                            .chance()
                        < 0.05)
            .count();
    assertThat(below).isBetween(8L, 34L);
  }

  @Tag("identity")
  @Test
  void memoryIsNoticedAtItsLag() {
    Portmanteau test = Portmanteau.of(List.of(remembering(500, 0.3, 4)), 0).orElseThrow();
    assertThat(test.chance()).isLessThan(1e-4);
    assertThat(test.lag()).isEqualTo(1);
    assertThat(test.correlation()).isCloseTo(0.3, within(0.1));
  }

  @Tag("identity")
  @Test
  void tooFewResidualsAreNotTested() {
    assertThat(Portmanteau.of(List.of(remembering(99, 0, 1)), 0)).isEmpty();
    assertThat(Portmanteau.of(List.of(new double[200]), 0)).isEmpty();
  }
}
