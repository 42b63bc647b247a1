package io.github.roundstar.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How long blocks must be. */
class BlockLengthTest {
  /**
   * Politis and White (2004) with the correction of 2009, worked out in numpy on the portable
   * first-order autoregressive series.
   */
  @Tag("published")
  @Test
  void agreesWithTheRecipe() {
    double[] series = KnownSeries.autoregression();
    assertThat(BlockLength.optimal(series)).isCloseTo(9.0308178828, within(1e-8));
    assertThat(BlockLength.of(series)).isEqualTo(10);
  }

  @Test
  void noMemoryNeedsOnlyShortBlocks() {
    assertThat(BlockLength.of(KnownSeries.unitNoise(1000))).isLessThan(6);
  }

  @Test
  void valuesThatDoNotVaryAndShortSeriesHaveALengthToo() {
    assertThat(BlockLength.of(new double[50])).isEqualTo(1);
    assertThat(BlockLength.of(new double[] {1})).isEqualTo(1);
    assertThat(BlockLength.of(new double[] {1, 2, 3, 4})).isEqualTo(1);
  }
}
