package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.motion.Disturbance.Kind;
import io.github.roundstar.simulate.RunTruth;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What befalls the star in simulated runs is found, named and sized; quiet runs stay quiet. */
@Tag("identity")
class DisturbanceSearchTest {
  private static List<Disturbance> found(SimulatedRun run) {
    return DisturbanceSearch.of(
        run.log(),
        Optional.of(SimulatedRuns.ra(run.log())),
        Optional.of(SimulatedRuns.dec(run.log())));
  }

  private static List<Disturbance> found(int seed, String more) throws Exception {
    return found(SimulatedRuns.of(seed, more));
  }

  /** Nine hours: less than one false jolt in ten is asked. */
  @Test
  void quietRunsHaveNone() throws Exception {
    int jolts = 0;
    for (int seed = 1; seed <= 6; seed++) {
      jolts += found(seed, "").size();
    }
    assertThat(jolts).isLessThanOrEqualTo(1);
  }

  /** Colour of the air is no jolt either. */
  @Test
  void seeingIsNoJolt() throws Exception {
    String seeing = "[seeing]\nfwhm_arcsec = 3\nwind_m_per_s = 3\nouter_scale_m = 25\n";
    assertThat(found(1, seeing)).isEmpty();
    assertThat(found(2, seeing)).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          KNOCK         | [[knock]]\\nat_min = 40\\nra_arcsec = 2.5\\ndec_arcsec = -1.5              | 2.92
          LASTING_SHIFT | [[shift]]\\nat_min = 40\\nseconds = 18\\nra_arcsec = 3\\ndec_arcsec = 4     | 5.0
          STAR_SWITCH   | [[star_switch]]\\nat_min = 40\\nra_arcsec = 5\\ndec_arcsec = 12\\nflux_ratio = 0.6 | 13.0
          """)
  void singleEventIsNamedAndSized(Kind kind, String scenario, double size) throws Exception {
    List<Disturbance> found = found(3, scenario.replace("\\n", "\n") + "\n");
    assertThat(found).hasSize(1);
    Disturbance only = found.get(0);
    assertThat(only.kind()).isEqualTo(kind);
    assertThat(only.sizeArcsec().orElseThrow()).isCloseTo(size, within(0.3 + 0.05 * size));
    assertThat(only.startSeconds()).isBetween(2395.0, 2412.0);
    assertThat(only.endSeconds()).isBetween(only.startSeconds(), 2425.0);
  }

  /** Gusts of at least five standard deviations of a white step; nine of ten are to be found. */
  @Test
  void gustsAreFound() throws Exception {
    int gusts = 0;
    int hits = 0;
    for (int seed = 1; seed <= 4; seed++) {
      SimulatedRun run = SimulatedRuns.of(seed, "[gusts]\nper_hour = 10\namplitude_arcsec = 3.5\n");
      List<Disturbance> found = found(run);
      for (RunTruth.Event event : run.truth().events()) {
        if (event.size() >= 5 * 0.44) {
          gusts++;
          hits += found.stream().anyMatch(d -> touches(d, event.timeSeconds())) ? 1 : 0;
        }
      }
    }
    assertThat(gusts).isGreaterThan(25);
    assertThat((double) hits / gusts).isGreaterThanOrEqualTo(0.9);
  }

  private static boolean touches(Disturbance found, double gust) {
    return found.startSeconds() < gust + 18 && found.endSeconds() > gust - 3;
  }

  /** Gusts took the noise floor to 0.66 for a true 0.44 when they were left in. */
  @Test
  void noiseOfAGustyRunIsThatOfTheQuietTime() throws Exception {
    SimulatedRun run = SimulatedRuns.of(2, "[gusts]\nper_hour = 12\namplitude_arcsec = 4\n");
    assertThat(SimulatedRuns.ra(run.log()).noiseArcsec().value())
        .isCloseTo(run.truth().ra().noiseArcsec(), within(0.03));
  }

  @Test
  void cloudIsSeenByTheStarsLight() throws Exception {
    List<Disturbance> found = found(5, "[[cloud]]\nat_min = 30\nminutes = 8\ndepth = 0.85\n");
    assertThat(found).extracting(Disturbance::kind).containsExactly(Kind.CLOUD);
    assertThat(found.get(0).lightLost().orElseThrow()).isCloseTo(0.85, within(0.03));
    assertThat(found.get(0).startSeconds()).isBetween(1800.0, 1950.0);
    assertThat(found.get(0).endSeconds()).isBetween(2130.0, 2280.0);
  }

  @Test
  void hotPixelIsNoStar() throws Exception {
    SimulatedRun run = SimulatedRuns.of(6, "[[knock]]\nat_min = 3\n", "hot_pixel = true\n");
    assertThat(found(run)).extracting(Disturbance::kind).contains(Kind.STUCK_STAR);
  }
}
