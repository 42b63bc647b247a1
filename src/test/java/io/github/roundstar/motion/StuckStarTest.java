package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Disturbance.Kind;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A false star is known by what all pulses pushed in vain; a star with one deaf gear is none. */
@Tag("identity")
class StuckStarTest {
  private static final String FALSE_STAR = "hot_pixel = true\n";

  private static Optional<AxisMotion> ra(SimulatedRun run) {
    return AxisNight.ra(List.of(run.log()), Equipment.UNKNOWN).runs().get(0).value();
  }

  private static Optional<AxisMotion> dec(SimulatedRun run) {
    return AxisNight.dec(List.of(run.log()), Equipment.UNKNOWN).runs().get(0).value();
  }

  private static boolean stuck(SimulatedRun run) {
    return DisturbanceSearch.of(run.log(), ra(run), dec(run)).stream()
        .anyMatch(found -> found.kind() == Kind.STUCK_STAR);
  }

  /** In runs 3, 4 and 8 Dec is pushed to one side but for a few pulses of unknown strength. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 4, 8})
  void falseStarIsKnown(int seed) throws Exception {
    SimulatedRun run = SimulatedRuns.of(seed, "", FALSE_STAR);
    assertThat(stuck(run)).isTrue();
  }

  /** Either axis answers one way only, or one axis not at all: loose gear, cable or clutch. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "response_north = 0.02\n",
        "response_south = 0.02\n",
        "response_north = 0.02\nresponse_south = 0.02\n",
        "response_east = 0.05\nresponse_north = 0.02\n",
        "dec_backlash_arcsec = 15\n"
      })
  void starThatAnswersOneWayIsNoFalseStar(String mount) throws Exception {
    assertThat(stuck(SimulatedRuns.of(2, mount))).isFalse();
  }
}
