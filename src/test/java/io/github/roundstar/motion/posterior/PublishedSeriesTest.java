package io.github.roundstar.motion.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The likelihood of wander and noise against series and values that others have published. */
class PublishedSeriesTest {
  /** Volume of the Nile at Aswan, 1871 to 1970 [1e8 m^3]. */
  private static final double[] NILE = {
    1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180,
    799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833,
    701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845,
    864, 862, 698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649,
    846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815,
    1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740
  };

  private static final double NO_MEMORY = 1e-6;

  private static double[][] products(double[] values, double[][] columns, double ratio) {
    WhiteFrames frames = frames(values, columns, ratio);
    return frames.products(new double[][][] {new double[Pushes.COLUMNS][values.length]})[0];
  }

  private static WhiteFrames frames(double[] values, double[][] columns, double ratio) {
    double[] seconds = new double[values.length];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = i;
    }
    ObservedRun run =
        new ObservedRun(
            seconds,
            new boolean[values.length],
            values,
            columns,
            new double[columns.length],
            Pushes.none(values.length),
            1);
    WhiteFrames frames =
        new WhiteFrames(new AxisModel(List.of(run), 1, 0.3, 0, 0, false, Priors.USUAL));
    frames.filter(ratio, NO_MEMORY);
    return frames;
  }

  /** Statsmodels 0.13.5, UnobservedComponents, exact diffuse start: -632.54563, 99 terms. */
  @Test
  @Tag("published")
  void diffuseLikelihoodOfTheNileIsThatOfTheReferenceLibrary() {
    double noise = 15098.518;
    double ratio = 1469.1764 / noise;
    WhiteFrames frames = frames(NILE, new double[0][], ratio);
    double squares = products(NILE, new double[0][], ratio)[5][5];
    double log =
        -0.5
            * (frames.steps() * Math.log(2 * Math.PI * noise)
                + frames.logDeterminant()
                + squares / noise);
    assertThat(frames.steps()).isEqualTo(99);
    assertThat(log).isCloseTo(-632.54563, within(5e-5));
  }

  /** Dense generalised least squares in NumPy: -315.737268, standard error 97.639214. */
  @Test
  @Tag("published")
  void stepOfTheNileBesideWanderIsThatOfDenseLeastSquares() {
    double[] step = new double[NILE.length];
    for (int i = 1899 - 1871; i < step.length; i++) {
      step[i] = 1;
    }
    double[][] products = products(NILE, new double[][] {step}, 1469.1 / 15099);
    assertThat(products[6][0] / products[0][0]).isCloseTo(-315.737268, within(1e-5));
    assertThat(Math.sqrt(15099 / products[0][0])).isCloseTo(97.639214, within(1e-5));
  }

  /** Dense generalised least squares in NumPy: 0.07267294. */
  @Test
  @Tag("published")
  void strengthOfThreeStepsBesideWanderAndDriftIsAsWellKnownAsDenseLeastSquaresSays() {
    int n = 120;
    double[] slope = new double[n];
    double[] steps = new double[n];
    for (int i = 0; i < n; i++) {
      slope[i] = i;
      steps[i] = (i >= 30 ? 1 : 0) - (i >= 60 ? 1 : 0) + (i >= 90 ? 1 : 0);
    }
    double[][] p = products(new double[n], new double[][] {slope, steps}, 4e-4 / 0.09);
    double information = (p[1][1] - p[1][0] * p[1][0] / p[0][0]) / 0.09;
    assertThat(1 / Math.sqrt(information)).isCloseTo(0.07267294, within(1e-8));
  }

  /** Quantiles of the normal distribution as any table has them. */
  @Test
  @Tag("published")
  void normalDistributionIsThatOfTheTables() {
    assertThat(Normal.below(1.959963984540054)).isCloseTo(0.975, within(1e-14));
    assertThat(Normal.below(-3)).isCloseTo(0.0013498980316300946, within(1e-16));
    assertThat(Normal.quantile(0.975)).isCloseTo(1.959963984540054, within(1e-12));
    assertThat(Normal.quantile(1e-5)).isCloseTo(-4.264890793922825, within(1e-10));
  }
}
