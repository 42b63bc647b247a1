package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.ExposureFrame.Optics;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.model.GuideCamera;
import io.github.roundstar.model.GuideRun;
import io.github.roundstar.model.LoopSettings;
import io.github.roundstar.model.Pointing;
import io.github.roundstar.model.RowCounts;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A wrong clock of the camera's computer is found out, and a right one left alone. */
class CameraClockTest {
  private static final Instant START = Instant.parse("2026-03-14T20:00:00Z");

  private static GuideRun run() {
    return run(0, 0);
  }

  /**
   * Three hours with a dither before each exposure of 600 s.
   *
   * @param later start after {@link #START} [s]
   * @param ditherFrame frames by which the dithers come later; negative for none
   */
  static GuideRun run(double later, int ditherFrame) {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 3600; i++) {
      frames.add(3 * i, 0, 0);
      if (ditherFrame >= 0 && i > ditherFrame && (i - ditherFrame) % 210 == 0) {
        frames.dither(3, 3);
      }
    }
    Frames built = frames.build();
    return new GuideRun(
        1,
        Optional.of(START.plusMillis(Math.round(later * 1000))),
        Pointing.UNKNOWN,
        GuideCamera.UNKNOWN,
        LoopSettings.UNKNOWN,
        built,
        RowCounts.of(built, 0, 0),
        List.of());
  }

  static List<ExposureFrame> exposures(double aheadSeconds) {
    List<ExposureFrame> frames = new ArrayList<>();
    for (int e = 0; e < 17; e++) {
      long millis = Math.round((630 * e + 20 + aheadSeconds) * 1000);
      frames.add(
          new ExposureFrame(
              "e" + e,
              START.plusMillis(millis),
              ExposureFrame.CameraClock.UTC,
              600,
              Optics.UNKNOWN,
              Optional.empty(),
              Optional.empty()));
    }
    return frames;
  }

  @ParameterizedTest
  @ValueSource(doubles = {3600, -3600, 7200, 86_400, -86_400, 19_800})
  void wholeZonesAreFoundExactly(double ahead) {
    CameraClock clock = CameraClock.of(exposures(ahead), List.of(run()));
    assertThat(clock.estimated()).isTrue();
    assertThat(clock.aheadSeconds()).isEqualTo(ahead);
    assertThat(clock.words()).contains("by " + Math.round(Math.abs(ahead)) + " s");
  }

  @ParameterizedTest
  @CsvSource({
    "3600, ahead by 3600 s, a time zone or summer time of 1.0 h",
    "-86400, behind by 86400 s, a wrong date by one day",
    "172800, ahead by 172800 s, a wrong date by two days",
  })
  void whatMakesSuchAnOffsetIsSaid(double ahead, String size, String fault) {
    CameraClock clock = CameraClock.of(exposures(ahead), List.of(run()));
    assertThat(clock.words()).contains(size).contains(fault);
  }

  @Test
  void oddOffsetsAreFoundWithinTheirTolerance() {
    CameraClock clock = CameraClock.of(exposures(4321), List.of(run()));
    assertThat(clock.aheadSeconds()).isCloseTo(4321, within(clock.toleranceSeconds() + 5));
    assertThat(clock.toleranceSeconds()).isLessThan(30);
  }

  @Test
  void agreeingClocksStay() {
    CameraClock clock = CameraClock.of(exposures(0), List.of(run()));
    assertThat(clock.estimated()).isFalse();
    assertThat(clock.aheadSeconds()).isZero();
    assertThat(clock.words()).contains("taken to agree");
  }

  @Test
  void exposuresOfAnotherWeekAreNotMovedHere() {
    CameraClock clock = CameraClock.of(exposures(7 * 86_400), List.of(run()));
    assertThat(clock.estimated()).isFalse();
    assertThat(clock.overlap()).isZero();
  }
}
