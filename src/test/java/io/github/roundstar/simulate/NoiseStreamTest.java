package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Chance is portable, and every source of noise has its own. */
class NoiseStreamTest {
  /** The JDK's own implementation of the same generator. */
  @Test
  @Tag("published")
  void generatorIsSplitMix() {
    SplittableRandom other = new SplittableRandom(20261008);
    NoiseStream ours = NoiseStream.of(20261008);

    for (int i = 0; i < 1000; i++) {
      assertThat(ours.nextLong()).isEqualTo(other.nextLong());
    }
  }

  @Test
  @Tag("identity")
  void gaussianHasMeanZeroVarianceOneAndLightTails() {
    NoiseStream noise = NoiseStream.of(5, "test", 1);
    int n = 200_000;
    double sum = 0;
    double squares = 0;
    double fourths = 0;
    for (int i = 0; i < n; i++) {
      double value = noise.gaussian();
      sum += value;
      squares += value * value;
      fourths += value * value * value * value;
    }

    assertThat(sum / n).isCloseTo(0, within(4 / Math.sqrt(n)));
    assertThat(squares / n).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
    assertThat(fourths / n).isCloseTo(3, within(4 * Math.sqrt(96.0 / n)));
  }

  @Test
  @Tag("identity")
  void sourcesAndRunsDoNotFollowEachOther() {
    NoiseStream one = NoiseStream.of(5, "air-ra", 1);
    NoiseStream other = NoiseStream.of(5, "air-dec", 1);
    NoiseStream nextRun = NoiseStream.of(5, "air-ra", 2);
    int n = 20_000;
    double sources = 0;
    double runs = 0;
    for (int i = 0; i < n; i++) {
      double value = one.gaussian();
      sources += value * other.gaussian();
      runs += value * nextRun.gaussian();
    }

    assertThat(sources / n).isCloseTo(0, within(4 / Math.sqrt(n)));
    assertThat(runs / n).isCloseTo(0, within(4 / Math.sqrt(n)));
  }
}
