package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.signal.FrequencyGrid;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Skirts fall with the square of the distance; a steady line has none. */
class SkirtsTest {
  private static final double ELEMENT = 1e-4;
  private static final double LINE = 0.01;
  private static final double PLAIN_MEDIAN = Math.log(2);
  private static final FrequencyGrid GRID =
      new FrequencyGrid(1e-3, ELEMENT / SummedSpectrum.OVERSAMPLING, 1200);

  @Test
  void backgroundFollowsTheSkirts() {
    double[] strength = new double[GRID.count()];
    Arrays.setAll(strength, j -> PLAIN_MEDIAN * Math.max(1, 400 / Math.pow(distance(j), 2)));
    double[] background = raised(strength);
    for (int j = 0; j < background.length; j++) {
      double expected = Math.max(1, 400 / Math.pow(Math.max(1, distance(j)), 2));
      assertThat(background[j]).isCloseTo(expected, within(1e-6 * expected));
    }
  }

  @Test
  void steadyLineLeavesTheBackgroundWhereLinesCanBeToldApart() {
    double[] strength = new double[GRID.count()];
    Arrays.fill(strength, PLAIN_MEDIAN);
    double[] background = raised(strength);
    for (int j = 0; j < background.length; j++) {
      if (distance(j) > 2.25) {
        assertThat(background[j]).isEqualTo(1);
      }
    }
  }

  @Test
  void neighbouringLineIsNoSkirt() {
    double[] strength = new double[GRID.count()];
    Arrays.fill(strength, PLAIN_MEDIAN);
    int neighbour = (int) Math.rint((LINE + 4 * ELEMENT - GRID.startHz()) / GRID.stepHz());
    for (int j = neighbour - 4; j <= neighbour + 4; j++) {
      strength[j] = 1000;
    }
    assertThat(raised(strength)[neighbour]).isEqualTo(1);
  }

  private static double distance(int j) {
    return Math.abs(GRID.hertz(j) - LINE) / ELEMENT;
  }

  private static double[] raised(double[] strength) {
    double[] background = new double[strength.length];
    Arrays.fill(background, 1);
    Skirts.raise(background, strength, GRID, PLAIN_MEDIAN, List.of(LINE));
    return background;
  }
}
