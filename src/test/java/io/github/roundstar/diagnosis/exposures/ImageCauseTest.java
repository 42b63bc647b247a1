package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.roundstar.diagnosis.exposures.ImageCause.NightContext;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Each rule for what the image shows and the log does not, on either side of its limit. */
class ImageCauseTest {
  private static final Instant START = Instant.parse("2026-01-01T20:00:00Z");

  private static final ZenithTurn FOLLOWS = new ZenithTurn(new Estimate(0.9, 0.7, 1.1), 9);
  private static final ZenithTurn STAYS = new ZenithTurn(new Estimate(0.1, -0.1, 0.3), 9);
  private static final ZenithGrowth GROWS = new ZenithGrowth(new Estimate(9, 8, 10), 9);
  private static final ZenithGrowth MAY_GROW = new ZenithGrowth(new Estimate(9, -1, 19), 9);

  private static Cause cause(String pattern, double fwhm, ZenithDirection zenith, int alike) {
    return cause(pattern, fwhm, zenith, alike, Optional.empty(), Optional.of(FOLLOWS));
  }

  private static Cause cause(
      String pattern,
      double fwhm,
      ZenithDirection zenith,
      int alike,
      Optional<ZenithGrowth> growth,
      Optional<ZenithTurn> turn) {
    MeasuredShape measured =
        new MeasuredShape(
            new Estimate(1.3, 1.28, 1.32),
            OptionalDouble.of(fwhm),
            OptionalDouble.of(40),
            Optional.empty(),
            pattern,
            Optional.empty(),
            true);
    ExposureFrame frame =
        new ExposureFrame(
            "a.fits",
            START,
            ExposureFrame.CameraClock.UTC,
            300,
            ExposureFrame.Optics.UNKNOWN,
            Optional.empty(),
            Optional.empty());
    Window window =
        new Window(
            frame,
            START,
            Optional.of(measured),
            Optional.empty(),
            0,
            0,
            0,
            1,
            0,
            new WindowMotion(0, 0, 0, 0, 0, 0, 0));
    NightContext night =
        new NightContext(
            Optional.empty(),
            OptionalDouble.of(2),
            OptionalDouble.of(5),
            OptionalDouble.of(10),
            alike,
            growth,
            turn);
    return new ImageCause(night, Equipment.UNKNOWN)
        .find(window, measured, Optional.ofNullable(zenith), 2);
  }

  @Test
  void patternsOverTheFieldComeFirst() {
    ZenithDirection zenith = new ZenithDirection(40, 60);
    assertThat(cause("rotation", 3, zenith, 5).code()).isEqualTo("field-rotation");
    assertThat(cause("radial", 3, zenith, 5).code()).isEqualTo("optics");
    assertThat(cause("radial", 3, zenith, 5).evidence()).contains("outwards");
    assertThat(cause("one-sided", 3, zenith, 5).code()).isEqualTo("optics");
    assertThat(cause("one-sided", 3, zenith, 5).evidence()).contains("one side");
  }

  @Test
  void dispersionPointsToTheZenithFarFromIt() {
    assertThat(cause("uniform", 2, new ZenithDirection(50, 36), 1).code())
        .isEqualTo("atmospheric-dispersion");
    assertThat(cause("uniform", 2, new ZenithDirection(50, 34), 1).code()).isNull();
    assertThat(cause("uniform", 2, new ZenithDirection(56, 60), 1).code()).isNull();
  }

  /** An angle near the vertical may be that of the optics. */
  @Test
  void dispersionAlsoGrowsOrTurnsWithTheZenith() {
    ZenithDirection up = new ZenithDirection(42, 60);
    assertThat(vertical(up, Optional.of(GROWS), Optional.empty()).code())
        .isEqualTo("atmospheric-dispersion");
    assertThat(vertical(up, Optional.of(MAY_GROW), Optional.of(FOLLOWS)).evidence())
        .contains("turns by 0.9 (0.7 .. 1.1)");
    assertThat(vertical(up, Optional.of(MAY_GROW), Optional.of(STAYS)).code()).isEqualTo("optics");
    assertThat(vertical(up, Optional.empty(), Optional.empty()).code()).isEqualTo("optics");
  }

  private static Cause vertical(
      ZenithDirection up, Optional<ZenithGrowth> growth, Optional<ZenithTurn> turn) {
    return cause("uniform", 2, up, 5, growth, turn);
  }

  @Test
  void starsWiderThanInTheBestImagesAreOutOfFocus() {
    assertThat(cause("uniform", 2.81, null, 1).code()).isEqualTo("focus");
    assertThat(cause("uniform", 2.79, null, 1).code()).isNull();
  }

  @Test
  void oneAngleAllNightIsOptics() {
    assertThat(cause("uniform", 2, null, 3).code()).isEqualTo("optics");
    assertThat(cause("uniform", 2, null, 2).code()).isNull();
  }
}
