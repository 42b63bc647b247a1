package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The way from the sky to the axis, shut near the pole. */
class CosDecTest {
  @ParameterizedTest
  @CsvSource({"0, 1", "60, 0.5", "-60, 0.5", "85, 0.08715574274765817"})
  void isTheCosineInBothHemispheres(double degrees, double cosine) {
    assertThat(CosDec.of(run(degrees)).value().orElseThrow()).isCloseTo(cosine, within(1e-15));
  }

  @ParameterizedTest
  @ValueSource(doubles = {85.01, -85.01, 90, -90})
  void isRefusedNearThePole(double degrees) {
    assertThat(CosDec.of(run(degrees)).value()).isEmpty();
    assertThat(CosDec.of(run(degrees)).because()).contains("within 5 degrees of the pole");
  }

  @Test
  void unknownDeclinationSaysWhereToAddIt() {
    GuideRun run = Runs.NOTHING_KNOWN.of(new FramesBuilder().build());
    assertThat(CosDec.of(run).because()).contains("add declination");
  }

  private static GuideRun run(double degrees) {
    return Runs.NOTHING_KNOWN.declination(degrees).of(new FramesBuilder().build());
  }
}
