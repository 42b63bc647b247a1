package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.simulate.SimulatedRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The camera's angle is read off what the pulses of one axis do in the other. */
class CrossAxisTest {
  private static Answer<Estimate> angle(SimulatedRun run) {
    return CrossAxis.degrees(run.log(), SimulatedRuns.ra(run.log()), SimulatedRuns.dec(run.log()));
  }

  @ParameterizedTest(name = "{0} deg")
  @Tag("identity")
  @CsvSource({"0", "5", "-12"})
  void angleIsFoundWithItsSign(double degrees) throws Exception {
    int covered = 0;
    double sum = 0;
    for (int seed = 1; seed <= 5; seed++) {
      Estimate angle =
          angle(SimulatedRuns.of(seed, "camera_angle_deg = " + degrees + "\n"))
              .value()
              .orElseThrow();
      covered += angle.covers(degrees) ? 1 : 0;
      sum += angle.value() / 5;
    }
    assertThat(covered).isGreaterThanOrEqualTo(4);
    // One run knows it to some 1.2 deg, the mean of five to half of that.
    assertThat(sum).isBetween(degrees - 1.4, degrees + 1.4);
  }

  @Test
  void withoutPulsesThereIsNoAngle() throws Exception {
    assertThat(angle(SimulatedRuns.of(1, "", "guided = false\n")).because()).contains("too few");
  }
}
