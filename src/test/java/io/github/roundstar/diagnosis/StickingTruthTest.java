package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.Night;
import io.github.roundstar.results.Finding;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A declination axis that sticks is told from one with play: simulated nights of known play and
 * stiction at a gain of 0.6.
 */
@Tag("identity")
class StickingTruthTest {
  private int sticks;
  private int covered;
  private int playRight;

  @ParameterizedTest(name = "play {0}, stiction {1}")
  @CsvSource({
    "0, 1, makes up for all of it at once",
    "2, 0, play of the gears describes the lost motion better",
    "0, 0.5, makes up for all of it at once",
    "0, 0, no lost motion stands out"
  })
  void findingNamesIt(double play, double stiction, String words) throws Exception {
    Finding finding =
        analysed(1, 0.3, play, stiction, "").findings().stream()
            .filter(found -> found.code().equals("dec-backlash"))
            .findFirst()
            .orElseThrow();
    assertThat(String.join(" ", finding.evidence())).contains(words);
  }

  @ParameterizedTest(name = "noise {0}, play {1}, stiction {2}, {3}")
  @CsvSource({
    "0.30, 0, 0.5, ''",
    "0.45, 0, 0.5, ''",
    "0.30, 0, 1.0, 'response_north = 0.97;response_south = 1.01'"
  })
  void thresholdIsFound(double noise, double play, double stiction, String more) throws Exception {
    nights(3, noise, play, stiction, more);

    assertThat(sticks).isEqualTo(3);
    assertThat(covered).isGreaterThanOrEqualTo(2);
  }

  @ParameterizedTest(name = "play {0}, stiction {1}")
  @CsvSource({"0, 0", "0.7, 0", "1.5, 0", "1.5, 0.3"})
  void playIsNotTakenForSticking(double play, double stiction) throws Exception {
    nights(3, 0.3, play, stiction, "");

    assertThat(sticks).isZero();
    assertThat(playRight).isEqualTo(3);
  }

  /** What is asked: called on nearly all nights where the log can tell, interval true on 88..99. */
  @Tag("long")
  @ParameterizedTest(name = "noise {0}, stiction {1}, {2}")
  @CsvSource({
    "0.20, 0.5, ''",
    "0.30, 0.5, ''",
    "0.45, 0.5, ''",
    "0.20, 1.0, ''",
    "0.30, 1.0, ''",
    "0.45, 1.0, ''",
    "0.30, 1.0, 'response_north = 0.97;response_south = 1.01'"
  })
  void stickingOnManyNights(double noise, double stiction, String more) throws Exception {
    nights(100, noise, 0, stiction, more);
    print(100, noise, 0, stiction, more);

    assertThat(sticks).isGreaterThanOrEqualTo(95);
    assertThat(covered).isBetween((int) Math.ceil(0.88 * sticks), (int) (0.99 * sticks));
  }

  /** What is asked: at most 2 of 100 nights with play and none of it called sticking. */
  @Tag("long")
  @ParameterizedTest(name = "play {0}, stiction {1}, {2}")
  @CsvSource({
    "0, 0, ''",
    "0.7, 0, ''",
    "1.5, 0, ''",
    "3, 0, ''",
    "1.5, 0.3, ''",
    "3, 0, '[gusts];per_hour = 20;amplitude_arcsec = 5;duration_s = 15'"
  })
  void playOnManyNights(double play, double stiction, String more) throws Exception {
    nights(100, 0.3, play, stiction, more);
    print(100, 0.3, play, stiction, more);

    assertThat(sticks).isLessThanOrEqualTo(2);
    assertThat(playRight).isGreaterThanOrEqualTo(95);
  }

  private void nights(int nights, double noise, double play, double stiction, String more)
      throws Exception {
    for (int seed = 1; seed <= nights; seed++) {
      RunResult run = analysed(seed, noise, play, stiction, more).runs().get(0);
      Estimate sticking = run.stickingArcsecAxis().dec();
      Estimate width = run.backlashArcsecAxis().dec();
      sticks += sticking != null ? 1 : 0;
      covered += sticking != null && sticking.covers(stiction) ? 1 : 0;
      playRight +=
          width != null && Math.abs(width.value() - play) < Math.max(0.4, 0.1 * play) ? 1 : 0;
    }
  }

  private void print(int nights, double noise, double play, double stiction, String more) {
    System.out.printf(
        Locale.ROOT,
        "noise %.2f, play %.1f, stiction %.1f %s: %d of %d called sticking, interval holds it on %d;"
            + " play within bounds on %d%n",
        noise,
        play,
        stiction,
        more,
        sticks,
        nights,
        covered,
        playRight);
  }

  private static NightResult analysed(
      int seed, double noise, double play, double stiction, String more) throws FormatException {
    String mount =
        String.format(
            Locale.ROOT, "dec_backlash_arcsec = %f%ndec_stiction_arcsec = %f%n", play, stiction);
    boolean ofMount = !more.startsWith("[");
    String further = more.replace(";", "\n") + "\n";
    String scenario =
        KnownTruthTest.scenario(seed, 0.6, noise, 0)
            + mount
            + (ofMount ? further : "")
            + KnownTruthTest.WORM
            + (ofMount ? "" : further);
    return NightAnalysis.of(
            new Night(
                "sticking",
                List.of(
                    Simulation.run(ScenarioReader.parse("sticking", scenario)).runs().get(0).log()),
                List.of()),
            Equipment.UNKNOWN,
            "test",
            true)
        .result();
  }
}
