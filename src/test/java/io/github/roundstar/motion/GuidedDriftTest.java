package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The slope of the used offsets, per minute. */
class GuidedDriftTest {
  /**
   * Slope and standard error by NumPy (Santer et al. 2000, J. Geophys. Res. 105, 7337) of 0.01 t
   * plus an autoregression of first order; its noise is the generator of NIST SP 1065. Student's t
   * for 50.35 degrees of freedom is 2.008.
   */
  @Test
  @Tag("published")
  void agreesWithTheLineThroughAnAutoregression() {
    FramesBuilder builder = new FramesBuilder();
    double series = 0;
    long state = 1234567890L;
    for (int i = 0; i < 200; i++) {
      series = 0.6 * series + (state / 2147483647.0 - 0.5) * Math.sqrt(12);
      state = 16807 * state % 2147483647L;
      builder.add(2.0 * i, 0.02 * i + series, -(0.02 * i + series));
      builder.add(2.0 * i + 1, 50, 50).state(FrameState.SETTLING);
    }
    Frames frames = builder.build();
    Estimate ra = GuidedDrift.arcsecPerMinute(frames, Axis.RA).orElseThrow();
    assertThat(ra.value()).isCloseTo(60 * 0.01246231950294246, within(1e-12));
    assertThat(ra.hi95() - ra.value())
        .isCloseTo(60 * 2.008 * 0.0015217572764927262, within(60 * 2e-6));
    Estimate dec = GuidedDrift.arcsecPerMinute(frames, Axis.DEC).orElseThrow();
    assertThat(dec.value()).isCloseTo(-ra.value(), within(1e-12));
  }

  @Test
  void twoUsedFramesHaveNone() {
    FramesBuilder builder = new FramesBuilder().add(0, 0, 0).add(2, 1, 1);
    builder.add(4, 0, 0).state(FrameState.SETTLING);
    assertThat(GuidedDrift.arcsecPerMinute(builder.build(), Axis.RA)).isEmpty();
  }
}
