package io.github.roundstar.motion;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * 2024-03-10T21:15:30.5 UTC, longitude 9.25 east, right ascension 8 h 30 min: hour angle 9.662438
 * degrees by Meeus's formula for sidereal time, which ERFA's gmst06 confirms to 2e-5 degrees.
 */
class HourAnglesTest {
  private static final Instant BEGIN = Instant.parse("2024-03-10T21:15:30.500Z");
  private static final double HOURS = 9.662438 / 15;
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static GuideRun run(OptionalDouble hourAngle, double rightAscension, double longitude) {
    return new GuideRun(
        1,
        Optional.of(BEGIN.minusSeconds(60)),
        new Pointing(
            OptionalDouble.of(20),
            hourAngle,
            Optional.empty(),
            NONE,
            OptionalDouble.of(rightAscension),
            OptionalDouble.of(longitude)),
        new GuideCamera(NONE, NONE),
        LoopSettings.UNKNOWN,
        new FramesBuilder().add(60, 0, 0).add(63, 0, 0).build(),
        RowCounts.NONE,
        List.of());
  }

  private static GuideRun declared(double hours) {
    return run(OptionalDouble.of(hours), 8.5, 9.25);
  }

  private static GuideRun pointed(GuideRun run, Pointing pointing) {
    return new GuideRun(
        run.id(),
        run.start(),
        pointing,
        run.camera(),
        run.loop(),
        run.frames(),
        run.counts(),
        run.notes());
  }

  @Test
  @Tag("published")
  void isWorkedOutWhereTheLogDoesNotDeclareIt() {
    assertThat(HourAngles.of(run(NONE, 8.5, 9.25), Equipment.UNKNOWN).value().orElseThrow())
        .isCloseTo(HOURS, within(2e-6));
  }

  @Test
  void declaredOneStandsWhereNothingCanBeCompared() {
    GuideRun run = declared(-3);
    Pointing alone =
        new Pointing(
            OptionalDouble.of(20), OptionalDouble.of(-3), Optional.empty(), OptionalDouble.empty());

    assertThat(HourAngles.of(pointed(run, alone), Equipment.UNKNOWN).value()).hasValue(-3.0);
  }

  /** 24 years of precession at declination 20, 0.024 h, and rounding to a tenth of an hour. */
  @ParameterizedTest(name = "off by {0} h")
  @CsvSource({"0", "0.05", "-0.07"})
  void smallDifferencesAreEquinoxAndRounding(double off) {
    assertThat(HourAngles.of(declared(HOURS + off), Equipment.UNKNOWN).value())
        .hasValue(HOURS + off);
  }

  @ParameterizedTest(name = "off by {0} h: {1}")
  @CsvSource({
    "0.1, check all four",
    "0.75, check all four",
    "1, clock seems to be 1.0 h off",
    "-2, clock seems to be 2.0 h off",
    "23, clock seems to be 1.0 h off",
    "5.5, clock seems to be 5.5 h off",
    "-1.288325, its sign seems to be wrong"
  })
  void contradictionIsNamedAndGivesNoNumber(double off, String meaning) {
    double hours = (HOURS + off + 36) % 24 - 12;

    var answer = HourAngles.of(declared(hours), Equipment.UNKNOWN);

    assertThat(answer.value()).isEmpty();
    assertThat(answer.because()).contains("time, longitude and right ascension").contains(meaning);
  }

  /** Greenwich sidereal time 127.912438 degrees, from the same source. */
  @Test
  void longitudeOfTheWrongSignIsNamed() {
    double hours = (127.912438 + 40) / 15 - 5;

    assertThat(HourAngles.of(run(OptionalDouble.of(hours), 5, -40), Equipment.UNKNOWN).because())
        .contains("longitude's sign seems to be wrong");
  }

  /** The site is told where the log has no longitude. */
  @Test
  void longitudeOfTheEquipmentFileServes() {
    GuideRun run = declared(-3);
    Pointing p = run.pointing();
    Pointing without =
        new Pointing(
            p.declinationDegrees(),
            p.hourAngleHours(),
            p.pierSide(),
            p.latitudeDegrees(),
            p.rightAscensionHours(),
            NONE);
    Equipment unknown = Equipment.UNKNOWN;
    Equipment there =
        new Equipment(
            new Equipment.Site(NONE, OptionalDouble.of(9.25), NONE, NONE, NONE),
            unknown.mount(),
            unknown.guide(),
            unknown.imaging(),
            unknown.seeingFwhmArcsec(),
            unknown.limits());

    assertThat(HourAngles.of(pointed(run, without), there).value()).isEmpty();
  }
}
