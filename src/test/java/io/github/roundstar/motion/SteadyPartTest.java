package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Drift beside one and a half to two and a half turns of a worm, of any phase. */
@Tag("identity")
class SteadyPartTest {
  private static final int NIGHTS = 12;
  private static final double DRIFT_ARCSEC_PER_MINUTE = 0.3;

  /**
   * With the swing as wander the interval was 0.8 to 1 arcsec/min to either side, and held the
   * truth on all nights.
   */
  @ParameterizedTest(name = "{0} frames of 3 s")
  @ValueSource(ints = {240, 280, 320, 360, 400})
  void driftIsToldBesideAWormOfUnknownPeriod(int frames) {
    int covered = 0;
    double half = 0;
    double square = 0;
    for (int seed = 1; seed <= NIGHTS; seed++) {
      AxisRun run =
          PlainNights.WITH_WORM
              .frames(frames)
              .drift(DRIFT_ARCSEC_PER_MINUTE)
              .late(479.0 * seed / NIGHTS)
              .run(1, seed);
      Estimate drift = SteadyPart.of(run, List.of()).orElseThrow().driftPerSecond().times(60);
      covered += drift.covers(DRIFT_ARCSEC_PER_MINUTE) ? 1 : 0;
      half += (drift.hi95() - drift.value()) / NIGHTS;
      square += Math.pow(drift.value() - DRIFT_ARCSEC_PER_MINUTE, 2) / NIGHTS;
    }
    assertThat(covered).isGreaterThanOrEqualTo(NIGHTS - 2);
    assertThat(half).isLessThan(0.4);
    assertThat(Math.sqrt(square)).isLessThan(0.25);
  }
}
