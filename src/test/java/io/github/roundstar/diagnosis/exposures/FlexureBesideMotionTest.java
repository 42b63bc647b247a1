package io.github.roundstar.diagnosis.exposures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.exposures.ImageCause.NightContext;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.Estimate;
import io.github.roundstar.model.ExposureFrame;
import io.github.roundstar.model.FramesBuilder;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Flexure beside a motion that the log holds: along one axis both add up or cancel, which sums of
 * variances do not show. The log's star drifts by 2 arcsec east during the exposure of 300 s.
 */
class FlexureBesideMotionTest {
  private static final Instant START = Instant.parse("2026-01-01T20:00:00Z");
  private static final double ROUND_FWHM = 2;
  private static final double LOGGED_EAST = 2;

  private static GuidedRun drifting() {
    FramesBuilder frames = new FramesBuilder();
    for (int i = 0; i < 300; i++) {
      frames.add(i, LOGGED_EAST * i / 300, 0);
    }
    Optional<Estimate> none = Optional.of(new Estimate(0, 0, 0));
    StarTrack track = StarTrack.measured(frames.build(), none, none);
    return new GuidedRun(
        CameraClockTest.run(0, -1), track, Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static Window window(Optional<MeasuredShape> measured) {
    ExposureFrame frame =
        new ExposureFrame(
            "a.fits",
            START,
            ExposureFrame.CameraClock.UTC,
            300,
            ExposureFrame.Optics.UNKNOWN,
            Optional.empty(),
            Optional.empty());
    GuidedRun run = drifting();
    WindowMotion motion = WindowMotion.of(run.track(), 0, 300, i -> true);
    return new Window(frame, START, measured, Optional.of(run), 0, 300, 0, 1, 0, motion);
  }

  /** Variances of an even trail, by its length squared over twelve. */
  @Tag("identity")
  @Test
  void driftsAlongOneAxisAddUpOrCancel() {
    Window logged = window(Optional.empty());
    assertThat(logged.drifting(2, 0).motion().ee()).isCloseTo(16 / 12.0, within(1e-4));
    assertThat(logged.drifting(-2, 0).motion().ee()).isCloseTo(0, within(1e-12));
    assertThat(logged.drifting(-2, 3).motion().nn()).isCloseTo(9 / 12.0, within(1e-4));
    assertThat(logged.drifting(2, 4).motion().en()).isCloseTo(16 / 12.0, within(1e-4));
  }

  /** What flexure of so much in the exposure says of stars as long as a trail of 2.5 arcsec. */
  private static Cause cause(double east, double north, double axisDegrees) {
    double long25 =
        PredictedShape.stretch(
                window(Optional.empty())
                    .drifting(2.5 - LOGGED_EAST, 0)
                    .core(i -> true, new double[3], ROUND_FWHM))
            .elongation();
    MeasuredShape measured =
        new MeasuredShape(
            new Estimate(long25, long25 - 0.02, long25 + 0.02),
            OptionalDouble.of(ROUND_FWHM),
            OptionalDouble.of(axisDegrees),
            Optional.empty(),
            "uniform",
            Optional.empty(),
            true);
    NightContext night =
        new NightContext(
            Optional.of(new Flexure(perHour(east), perHour(north), 9)),
            OptionalDouble.of(ROUND_FWHM),
            OptionalDouble.empty(),
            OptionalDouble.of(3),
            9,
            Optional.empty(),
            Optional.empty());
    return new ImageCause(night, Equipment.UNKNOWN)
        .find(window(Optional.of(measured)), measured, Optional.empty(), ROUND_FWHM);
  }

  private static Estimate perHour(double arcsecInTheExposure) {
    return Estimate.symmetric(arcsecInTheExposure * 12, 0.5);
  }

  @Test
  void flexureThatCancelsTheLogsDriftLeavesItsOtherAxis() {
    assertThat(cause(-2, 2.5, 0).code()).isEqualTo("differential-flexure");
    assertThat(cause(-4.5, 0, 90).code()).isEqualTo("differential-flexure");
  }

  /** All these exposures are long at one angle: without flexure that is the optics. */
  @Test
  void flexureAtAnotherAngleIsNotTheCause() {
    assertThat(cause(-2, 2.5, 60).code()).isEqualTo("optics");
    assertThat(cause(2, 0, 0).code()).isEqualTo("optics");
  }
}
