package io.github.roundstar.stars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Stars of successive images find each other. */
class StarMatchTest {
  private static List<Star> stars(long seed, int count, double dx, double dy, double noise) {
    Random place = new Random(seed);
    Random jitter = new Random(seed + 1);
    List<Star> stars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      stars.add(
          new Star(
              1000 * place.nextDouble() + dx + noise * jitter.nextGaussian(),
              800 * place.nextDouble() + dy + noise * jitter.nextGaussian(),
              1000 + i,
              50,
              2,
              2,
              0,
              0.04));
    }
    return stars;
  }

  @Test
  void shiftComesBack() {
    StarMatch match =
        StarMatch.of(stars(1, 60, 0, 0, 0.05), stars(1, 60, 17.3, -4.2, 0.05)).orElseThrow();
    assertThat(match.dxPixels()).isCloseTo(17.3, within(4 * match.sigmaPixels()));
    assertThat(match.dyPixels()).isCloseTo(-4.2, within(4 * match.sigmaPixels()));
    assertThat(match.sigmaPixels()).isLessThan(0.05);
  }

  @Test
  void otherStarsDoNotMatch() {
    assertThat(StarMatch.of(stars(1, 60, 0, 0, 0), stars(2, 60, 0, 0, 0))).isEmpty();
  }

  @Test
  void imageWithoutStarsMatchesNothing() {
    assertThat(StarMatch.of(stars(1, 60, 0, 0, 0), List.of())).isEmpty();
  }
}
