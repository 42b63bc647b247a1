package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.GuideRun;
import org.junit.jupiter.api.Test;

/** Refraction is taken off only where the star's place is known and not contradicted. */
class GuideStarAirTest {
  private static final Equipment TOLD = SingleFault.DIFFERENTIAL_REFRACTION.equipment();

  @Test
  void refractionFollowsFromPlaceAndEquipment() {
    assertThat(GuideStarAir.of(run(0), TOLD).value()).isPresent();
  }

  @Test
  void contradictedHourAngleIsTheReason() {
    assertThat(GuideStarAir.of(run(-2), TOLD).value()).isEmpty();
    assertThat(GuideStarAir.of(run(-2), TOLD).because())
        .contains("hour_angle is 2.0 h away from what time, longitude and right ascension give");
  }

  private static GuideRun run(double off) {
    return ZenithDirectionTest.run(20, 9.662438 / 15 + off);
  }
}
