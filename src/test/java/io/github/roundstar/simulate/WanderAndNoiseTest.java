package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.signal.AllanDeviation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** An unguided mount wanders, and frames are noisy, as the scenario says. */
class WanderAndNoiseTest {
  private static final int FRAMES = 4000;

  /**
   * Allan deviation (Riley, NIST SP 1065, section 5.2) of what is measured less the steady motion,
   * within three times its scatter. Exposures are so short that they average no wander.
   */
  @Test
  @Tag("identity")
  void haveTheAllanDeviationOfAWalkAndWhiteNoise() throws Exception {
    SimulatedRun run =
        Simulation.run(
                ScenarioReader.parse(
                    "unguided",
                    """
                    [night]
                    seed = 3
                    cadence_s = 3
                    guide_exposure_s = 0.05
                    [mount]
                    dec_wander_arcsec_per_root_s = 0.03
                    [noise]
                    white_arcsec = 0.4
                    [star]
                    snr = 10000
                    [[run]]
                    duration_min = 200
                    guided = false
                    """))
            .runs()
            .get(0);
    double[] left = new double[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      left[i] = run.log().frames().decArcsec(i) - run.frames().at(FrameTruth.Column.STEADY_DEC, i);
    }
    for (int averaged : new int[] {1, 4, 16, 64}) {
      double expected = AllanDeviation.expected(0.4 * 0.4, 0.03 * 0.03 * 3, averaged);
      assertThat(AllanDeviation.overlapping(left, averaged) / expected)
          .as("%d averaged", averaged)
          .isCloseTo(1, within(3 / Math.sqrt(2.0 * FRAMES / averaged)));
    }
  }
}
