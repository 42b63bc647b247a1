package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The zenith is where the star's place says, unless its hour angle is contradicted. */
class ZenithDirectionTest {
  /** Hour angle at this time, 9.25 degrees east, of right ascension 8.5 h: see HourAnglesTest. */
  private static final Instant FIRST_FRAME = Instant.parse("2024-03-10T21:15:30.500Z");

  private static final double HOURS = 9.662438 / 15;
  private static final double LATITUDE = 48;

  static GuideRun run(double declinationDegrees, double hourAngle) {
    return new GuideRun(
        1,
        Optional.of(FIRST_FRAME.minusSeconds(60)),
        new Pointing(
            OptionalDouble.of(declinationDegrees),
            OptionalDouble.of(hourAngle),
            Optional.empty(),
            OptionalDouble.of(LATITUDE),
            OptionalDouble.of(8.5),
            OptionalDouble.of(9.25)),
        GuideCamera.UNKNOWN,
        LoopSettings.UNKNOWN,
        new FramesBuilder().add(60, 0, 0).add(63, 0, 0).build(),
        RowCounts.NONE,
        List.of());
  }

  /** On the meridian, south of the zenith: distance is latitude less declination. */
  @Tag("identity")
  @Test
  void starOnTheMeridianHasTheZenithNorth() {
    double untilThen = 60 - HOURS * 3600 / 1.002738;
    ZenithDirection zenith =
        ZenithDirection.of(run(20, HOURS), Equipment.UNKNOWN, untilThen).orElseThrow();
    assertThat(zenith.distanceDegrees()).isCloseTo(LATITUDE - 20, within(1e-3));
    assertThat((zenith.positionAngleDegrees() + 90) % 180).isCloseTo(90, within(1e-2));
  }

  @Test
  void contradictedHourAngleGivesNoDirection() {
    assertThat(ZenithDirection.of(run(20, HOURS - 2), Equipment.UNKNOWN, 0)).isEmpty();
  }
}
