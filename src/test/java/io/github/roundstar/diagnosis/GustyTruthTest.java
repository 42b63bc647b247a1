package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Gusts do not spoil what is found of the mount: worm, drift, response and play are those of the
 * quiet time. With the gusts left in, the worm's interval was three times as wide, and a mount
 * without play was given 1.7 arcsec of it.
 */
@Tag("identity")
class GustyTruthTest {
  private static final double RATE = 0.5 * 15.041067;
  private static final double WORM_ARCSEC = 6;

  private int figures;
  private int covered;
  private double worm;
  private double response;
  private int told;

  private static SimulatedRun run(int seed, double play) throws Exception {
    return Simulation.run(
            ScenarioReader.parse(
                "gusty",
                KnownTruthTest.scenario(seed, 0.6, 0.3, 0)
                    + "dec_backlash_arcsec = "
                    + play
                    + "\n"
                    + KnownTruthTest.WORM
                    + "[gusts]\nper_hour = 20\namplitude_arcsec = 5\nduration_s = 15\n"))
        .runs()
        .get(0);
  }

  private void covers(Estimate found, double truth) {
    figures++;
    covered += found.covers(truth) ? 1 : 0;
  }

  private void play(int nights, double play) throws Exception {
    for (int seed = 1; seed <= nights; seed++) {
      SimulatedRun night = run(seed, play);
      RunResult found =
          NightAnalysis.of(
                  new Night("gusty", List.of(night.log()), List.of()),
                  Equipment.UNKNOWN,
                  "test",
                  true)
              .result()
              .runs()
              .get(0);
      Estimate swing = found.periodic().components().get(0).amplitudeArcsecAxis();
      Estimate ra = found.responseArcsecPerSecond().ra().axis();
      worm += swing.value() / WORM_ARCSEC / nights;
      covers(swing, WORM_ARCSEC);
      if (ra != null) {
        told++;
        response += ra.value() / RATE;
        covers(ra, RATE);
      }
      covers(found.responseArcsecPerSecond().dec().axis(), RATE);
      covers(found.driftArcsecPerMinuteSky().ra(), night.truth().ra().driftArcsecPerMinute());
      covers(found.driftArcsecPerMinuteSky().dec(), night.truth().dec().driftArcsecPerMinute());
      covers(found.backlashArcsecAxis().dec(), play);
    }
  }

  @ParameterizedTest(name = "play {0}")
  @CsvSource({"0", "3"})
  void mountIsRecoveredBetweenGusts(double play) throws Exception {
    play(1, play);

    assertThat(told).isEqualTo(1);
    assertThat(Math.abs(worm - 1)).isLessThan(0.03);
    assertThat(covered).isGreaterThanOrEqualTo(figures - 1);
  }

  @Tag("long")
  @ParameterizedTest(name = "play {0}")
  @CsvSource({"0", "3"})
  void mountIsRecoveredBetweenGustsOnManyNights(double play) throws Exception {
    play(100, play);

    assertThat(Math.abs(worm - 1)).isLessThan(0.02);
    assertThat(told).isGreaterThanOrEqualTo(98);
    assertThat(Math.abs(response / told - 1)).isLessThan(0.02);
    assertThat(covered).isBetween((int) (0.88 * figures), (int) (0.99 * figures));
  }
}
