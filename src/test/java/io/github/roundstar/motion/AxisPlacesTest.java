package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("identity")
class AxisPlacesTest {
  private static final int MANY = 20_000;
  private static final double[] SCALES = {1, 2, 4, 8, 16, 32, 64, 128};

  private static double[] column(
      List<AxisPlaces.Place> places, ToDoubleFunction<AxisPlaces.Place> part) {
    return places.stream().mapToDouble(part).toArray();
  }

  /**
   * What a night tells well is hardly moved by what is known of axes at large: by less than a sixth
   * of its standard error, about 4 / 16^2 of the distance.
   */
  @Test
  void wellKnownAxisIsDrawnAsItIsKnown() {
    List<AxisPlaces.Place> places = AxisPlaces.draws(30, -12, 4, 1, 1.2, MANY);
    double[] first = column(places, AxisPlaces.Place::first);
    double[] second = column(places, AxisPlaces.Place::second);

    assertThat(StatUtils.mean(first)).isCloseTo(30, within(0.33));
    assertThat(StatUtils.mean(second)).isCloseTo(-12, within(0.16));
    assertThat(Math.sqrt(StatUtils.variance(first))).isCloseTo(2, within(0.05));
    assertThat(Math.sqrt(StatUtils.variance(second))).isCloseTo(1, within(0.03));
    assertThat(new PearsonsCorrelation().correlation(first, second)).isCloseTo(0.6, within(0.02));
  }

  /**
   * One part is 80 arcmin, the other unknown: its distribution by summing over the scales, each
   * weighted by the density of the known part, with the normal distribution of Commons Math.
   */
  @Test
  void unknownPartIsAsWideAsTheKnownOneTells() {
    List<AxisPlaces.Place> places = AxisPlaces.draws(80, 0, 4, Double.POSITIVE_INFINITY, 0, MANY);
    double[] second = column(places, AxisPlaces.Place::second);

    for (double arcmin : new double[] {10, 40, 80, 160}) {
      double weights = 0;
      double within = 0;
      for (double scale : SCALES) {
        double weight = new NormalDistribution(0, Math.hypot(scale, 2)).density(80);
        weights += weight;
        within += weight * (2 * new NormalDistribution(0, scale).cumulativeProbability(arcmin) - 1);
      }
      double drawn =
          (double) Arrays.stream(second).filter(x -> Math.abs(x) <= arcmin).count() / MANY;
      assertThat(drawn).as("within %s", arcmin).isCloseTo(within / weights, within(0.02));
    }
    assertThat(StatUtils.mean(column(places, AxisPlaces.Place::first))).isCloseTo(80, within(0.1));
  }

  @Test
  void sameNightHasTheSameDraws() {
    assertThat(AxisPlaces.draws(3, 4, 1, 2, 0.1, 32))
        .isEqualTo(AxisPlaces.draws(3, 4, 1, 2, 0.1, 32))
        .doesNotHaveDuplicates();
  }
}
