package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Finding;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A declination axis that sticks is told from one with play where the log can tell. */
@Tag("identity")
class StickingTruthTest {
  @ParameterizedTest(name = "play {0}, stiction {1}")
  @CsvSource({
    "0, 1, sticks and then lets go",
    "2, 0, does not tell the two apart",
    "0, 0.5, does not tell the two apart"
  })
  void stickingIsNamedWhereItShows(double play, double stiction, String words) throws Exception {
    String scenario =
        KnownTruthTest.scenario(1, 0.6, 0.3, 0)
            + String.join(
                "\n", "dec_backlash_arcsec = " + play, "dec_stiction_arcsec = " + stiction, "")
            + KnownTruthTest.WORM;
    Finding finding =
        NightAnalysis.of(
                new Night(
                    "sticking",
                    List.of(
                        Simulation.run(ScenarioReader.parse("sticking", scenario))
                            .runs()
                            .get(0)
                            .log()),
                    List.of()),
                Equipment.UNKNOWN,
                "test",
                true)
            .result()
            .findings()
            .stream()
            .filter(found -> found.code().equals("dec-backlash"))
            .findFirst()
            .orElseThrow();
    assertThat(String.join(" ", finding.evidence())).contains(words);
  }
}
