package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideRun;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The declared speed of a pulse: the log's word first, then the equipment file's. */
class GuideRateTest {
  /** IERS/IAU rotation rate of the Earth, 15.041067 arcsec/s. */
  @Test
  @Tag("published")
  void isAMultipleOfTheSiderealRate() {
    GuideRun run = run(Runs.NOTHING_KNOWN.guideRate(0.5));
    assertThat(GuideRate.declaredAxis(run, Equipment.UNKNOWN).value().orElseThrow())
        .isCloseTo(7.5205335, within(2e-7));
  }

  @Test
  void logOutranksTheEquipmentFile() {
    Equipment equipment = equipment(0.9);
    GuideRun silent = run(Runs.NOTHING_KNOWN);
    GuideRun telling = run(Runs.NOTHING_KNOWN.guideRate(0.5));
    assertThat(GuideRate.declaredAxis(silent, equipment).value().orElseThrow())
        .isCloseTo(0.9 * 15.041067, within(2e-6));
    assertThat(GuideRate.declaredAxis(telling, equipment).value().orElseThrow())
        .isCloseTo(0.5 * 15.041067, within(2e-6));
  }

  @Test
  void onTheSkyRightAscensionIsSlowerAndDeclinationIsNot() {
    GuideRun run = run(Runs.NOTHING_KNOWN.guideRate(1).declination(60));
    double axis = GuideRate.declaredAxis(run, Equipment.UNKNOWN).value().orElseThrow();
    assertThat(GuideRate.unitSky(run, Axis.RA, Equipment.UNKNOWN).value().orElseThrow())
        .isCloseTo(axis / 2, within(1e-12));
    assertThat(GuideRate.unitSky(run, Axis.DEC, Equipment.UNKNOWN).value().orElseThrow())
        .isEqualTo(axis);
  }

  @Test
  void reasonsNameWhatIsMissing() {
    GuideRun noRate = run(Runs.NOTHING_KNOWN.declination(10));
    GuideRun noDeclination = run(Runs.NOTHING_KNOWN.guideRate(1));
    assertThat(GuideRate.declaredAxis(noRate, Equipment.UNKNOWN).because()).contains("guide_rate");
    assertThat(GuideRate.unitAxis(noRate, Equipment.UNKNOWN))
        .isCloseTo(0.5 * 15.041067, within(2e-6));
    assertThat(GuideRate.unitSky(noDeclination, Axis.RA, Equipment.UNKNOWN).because())
        .contains("declination");
    assertThat(GuideRate.unitSky(noDeclination, Axis.DEC, Equipment.UNKNOWN).value()).isPresent();
  }

  private static GuideRun run(Runs settings) {
    return settings.of(new FramesBuilder().build());
  }

  private static Equipment equipment(double guideRate) {
    Equipment unknown = Equipment.UNKNOWN;
    return new Equipment(
        unknown.site(),
        new Equipment.Mount(
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(guideRate),
            Optional.empty(),
            List.of()),
        unknown.guide(),
        unknown.imaging(),
        unknown.seeingFwhmArcsec(),
        unknown.limits());
  }
}
