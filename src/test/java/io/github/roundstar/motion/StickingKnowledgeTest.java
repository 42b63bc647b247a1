package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.motion.AxisKnowledge.Part;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An axis that sticks is told from one with play on simulated nights of known truth. */
@Tag("identity")
class StickingKnowledgeTest {
  private static AxisKnowledge dec(int seed, String mount) throws Exception {
    GuideRun run = SimulatedRuns.of(seed, mount).log();
    Reconstruction made = Reconstruction.of(run, Axis.DEC, Equipment.UNKNOWN).value().orElseThrow();
    return AxisKnowledge.Peaks.of(
            List.of(new Part(run, made, Optional.empty(), 1, 1, true)), Axis.DEC, List.of())
        .known();
  }

  @ParameterizedTest(name = "stiction {1}, north {2}, south {3}")
  @CsvSource({
    "1, 0.4, 1.02, 0.98",
    "2, 0.7, 1.00, 1.00",
    "3, 1.1, 0.97, 1.01",
    "4, 2.0, 1.03, 1.03",
  })
  void axisThatSticksIsCalledSoAndItsThresholdHeld(
      int seed, double stiction, double north, double south) throws Exception {
    AxisKnowledge known =
        dec(
            seed,
            "response_north = %s\nresponse_south = %s\ndec_stiction_arcsec = %s\n"
                .formatted(north, south, stiction));

    assertThat(known.playArcsecAxis()).isEmpty();
    assertThat(known.stickingArcsecAxis().orElseThrow().estimate().covers(stiction)).isTrue();
    assertThat(known.oneWay(1).estimate().covers(north)).isTrue();
    assertThat(known.otherWay(1).estimate().covers(south)).isTrue();
  }

  @ParameterizedTest(name = "play {1}")
  @CsvSource({"1, 0.4", "2, 1.2", "3, 4"})
  void axisWithPlayIsNotCalledSo(int seed, double play) throws Exception {
    AxisKnowledge known = dec(seed, "dec_backlash_arcsec = " + play + "\n");

    assertThat(known.stickingArcsecAxis()).isEmpty();
    assertThat(known.playArcsecAxis().orElseThrow().estimate().covers(play)).isTrue();
  }
}
