package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Component;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A guided strain-wave mount: a long turn with strong harmonics, beside an ordinary belt. */
@Tag("identity")
class StrainWaveTest {
  private static final double TURN_SECONDS = 431;
  private static final double[] ARCSEC = {9, 14, 3};

  private static final String DRIVE =
      """
      [[mount.harmonic]]
      order = 1
      amplitude_arcsec = 9
      [[mount.harmonic]]
      order = 2
      amplitude_arcsec = 14
      phase_rad = 0.7
      [[mount.harmonic]]
      order = 3
      amplitude_arcsec = 3
      phase_rad = -1.2
      [[mount.gear]]
      period_s = 47.3
      amplitude_arcsec = 1
      """;

  private static NightResult analysed(int seed, Optional<Equipment.Drive> drive) throws Exception {
    Equipment.Mount mount =
        new Equipment.Mount(
            Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), drive, List.of());
    Equipment none = Equipment.UNKNOWN;
    Equipment equipment =
        new Equipment(
            none.site(),
            mount,
            none.guide(),
            none.imaging(),
            none.seeingFwhmArcsec(),
            none.limits());
    String scenario =
        KnownTruthTest.scenario(seed, 0.6, 0.4, 0)
            .replace("worm_period_s = 479", "worm_period_s = 431");
    return NightAnalysis.of(
            new Night(
                "strain",
                List.of(
                    Simulation.run(ScenarioReader.parse("strain", scenario + DRIVE))
                        .runs()
                        .get(0)
                        .log()),
                List.of()),
            equipment,
            "test",
            true)
        .result();
  }

  private static Component named(NightResult result, String source) {
    return result.night().periodic().components().stream()
        .filter(component -> component.source().equals(source))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void turnAndHarmonicsAreFoundAndNamed(int seed) throws Exception {
    NightResult result = analysed(seed, Optional.of(Equipment.Drive.STRAIN_WAVE));

    assertThat(result.night().periodic().components())
        .extracting(Component::source)
        .containsExactly("strain-wave/2", "strain-wave", "strain-wave/3", "unlabelled");
    for (int order = 1; order <= ARCSEC.length; order++) {
      Component part = named(result, order == 1 ? "strain-wave" : "strain-wave/" + order);
      assertThat(part.periodSeconds().value() * order / TURN_SECONDS).isBetween(0.997, 1.003);
      assertThat(part.amplitudeArcsecAxis().value() / ARCSEC[order - 1]).isBetween(0.95, 1.05);
    }
    assertThat(named(result, "unlabelled").periodSeconds().value()).isBetween(47.2, 47.4);
    assertThat(result.night().periodic().cycles()).isBetween(16.6, 16.8);
  }

  @Test
  void driveIsNotNamedUnlessTheEquipmentFileSaysSo() throws Exception {
    assertThat(analysed(1, Optional.empty()).night().periodic().components())
        .extracting(Component::source)
        .containsOnly("unlabelled");
  }
}
