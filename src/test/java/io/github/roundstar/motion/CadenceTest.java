package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.FramesBuilder;
import org.junit.jupiter.api.Test;

/** The cadence is the median step, untouched by a gap. */
class CadenceTest {
  @Test
  void gapsDoNotCount() {
    FramesBuilder builder = new FramesBuilder().add(0, 0, 0).add(2, 0, 0).add(4.5, 0, 0);
    builder.add(600, 0, 0).add(602.5, 0, 0).add(605, 0, 0);
    assertThat(Cadence.medianSeconds(builder.build())).hasValue(2.5);
  }

  @Test
  void oneFrameHasNone() {
    assertThat(Cadence.medianSeconds(new FramesBuilder().add(0, 0, 0).build())).isEmpty();
    assertThat(Cadence.medianSeconds(new FramesBuilder().build())).isEmpty();
  }
}
