package io.github.roundstar.motion.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The posterior against brute force: dense covariances and sums over even steps. */
@Tag("identity")
class DensePosteriorTest {
  private static final Priors ONE_STRENGTH =
      Priors.USUAL
          .ofOneSize()
          .withStrengths(
              List.of(
                  new Priors.Strength(0.8, 1, 0.1, 0.021),
                  new Priors.Strength(0.2, 1.4, 0.3, 0.021)));

  /** Sixty frames in two pieces, uneven, with drift and a sinusoid, pushed at random. */
  private static AxisModel sixty(long seed, Priors priors) {
    Random random = new Random(seed);
    int n = 60;
    double[] seconds = new double[n];
    boolean[] starts = new boolean[n];
    double[] arcsec = new double[n];
    double[][] columns = new double[3][n];
    double[][] pushes = new double[5][n];
    double walk = 0;
    double noise = random.nextGaussian();
    for (int i = 0; i < n; i++) {
      double step = 1.5 + random.nextDouble();
      seconds[i] = (i == 0 ? 0 : seconds[i - 1]) + step;
      starts[i] = i == 37;
      double kept = Math.exp(-step / 1.2);
      noise = kept * noise + Math.sqrt(1 - kept * kept) * random.nextGaussian();
      walk += 0.05 * Math.sqrt(step) * random.nextGaussian();
      columns[0][i] = seconds[i] - 60;
      columns[1][i] = Math.cos(seconds[i] / 9);
      columns[2][i] = Math.sin(seconds[i] / 9);
      if (i > 0) {
        double push = random.nextGaussian();
        pushes[0][i] = pushes[0][i - 1] + push;
        pushes[1][i] = pushes[0][i - 1] + 0.6 * push + 0.1 * push * Math.abs(push);
        pushes[2][i] = pushes[0][i - 1];
        pushes[3][i] = pushes[3][i - 1] + Math.abs(push);
        pushes[4][i] = pushes[3][i - 1];
      }
      arcsec[i] =
          3
              + (i >= 37 ? 5 : 0)
              + 0.02 * seconds[i]
              + 0.7 * columns[1][i]
              + walk
              + 0.4 * noise
              - 1.05 * (0.7 * pushes[0][i] + 0.3 * pushes[1][i])
              - 0.02 * pushes[3][i];
    }
    return new AxisModel(
        List.of(
            new ObservedRun(
                seconds,
                starts,
                arcsec,
                columns,
                new double[] {0.1, 15, 15},
                (w, s, u) -> pushes,
                1)),
        2,
        0.4,
        0,
        0,
        false,
        priors);
  }

  @Test
  void momentsAreThoseOfBruteForceToAMillionth() {
    AxisModel model = sixty(7, ONE_STRENGTH);
    AxisPosterior posterior = AxisPosterior.of(model, Resolution.FINE);
    double[] dense = new DensePosterior(model).sum(0.3, 0.3, 0.1);
    assertThat(posterior.logEvidence()).isCloseTo(dense[0], within(1e-6));
    double deviation = Math.sqrt(dense[2]);
    assertThat(posterior.strengthMoments()[0]).isCloseTo(dense[1], within(1e-6 * deviation));
    assertThat(posterior.strengthMoments()[1]).isCloseTo(dense[2], within(1e-6 * dense[2]));
    double ofDrift = Math.sqrt(dense[4]);
    assertThat(posterior.firstColumnMoments()[0]).isCloseTo(dense[3], within(1e-6 * ofDrift));
    assertThat(posterior.firstColumnMoments()[1]).isCloseTo(dense[4], within(1e-6 * dense[4]));
    AxisPosterior usual = AxisPosterior.of(model);
    assertThat(usual.logEvidence()).isCloseTo(dense[0], within(0.01));
    assertThat(usual.strengthMoments()[0]).isCloseTo(dense[1], within(0.01 * deviation));
    assertThat(usual.strengthMoments()[1]).isCloseTo(dense[2], within(0.01 * dense[2]));
  }
}
