package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.model.FrameState;
import io.github.roundstar.model.Frames;
import io.github.roundstar.model.FramesBuilder;
import io.github.roundstar.sky.SiderealRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Taking the corrections out of a guided run gives back what the mount did. */
class ReconstructionTest {
  private static final Runs SETTINGS =
      Runs.NOTHING_KNOWN.declination(-40).guideRate(0.5).exposure(1);

  /** Cosine of 40 degrees by the table of any school book. */
  private static final double COSINE = 0.766044443118978;

  private static final double RATE = 0.5 * SiderealRate.ARCSEC_PER_SECOND;

  @Test
  @Tag("identity")
  void guidedRunGivesBackTheMountsMotion() {
    Frames frames = guided();
    MotionSeries ra = sky(frames, Axis.RA);
    MotionSeries dec = sky(frames, Axis.DEC);
    assertThat(ra.size()).isEqualTo(199);
    for (int m = 0; m < ra.size(); m++) {
      assertThat(ra.arcsec(m)).isCloseTo(mountRa(ra.seconds(m)), within(1e-9));
      assertThat(dec.arcsec(m)).isCloseTo(mountDec(dec.seconds(m)), within(1e-9));
      assertThat(ra.startsPiece(m)).isEqualTo(m == 0);
    }
    assertThat(ra.spanSeconds()).isEqualTo(597);
  }

  /** A push to the east makes the offset fall, so the same offset after it means a motion east. */
  @Test
  void positivePulseHidesAMotionEast() {
    Frames frames =
        new FramesBuilder().add(0, 1, 0).pulses(200, 0).add(3, 1, 0).pulses(0, 0).build();
    MotionSeries motion = sky(frames, Axis.RA);
    assertThat(motion.arcsec(1) - motion.arcsec(0)).isCloseTo(0.2 * RATE * COSINE, within(1e-12));
  }

  @Test
  void declinationIsNeverMultipliedByTheCosine() {
    Frames frames =
        new FramesBuilder().add(0, 0, 1).pulses(0, 200).add(3, 0, 1).pulses(0, 0).build();
    MotionSeries motion = sky(frames, Axis.DEC);
    assertThat(motion.arcsec(1) - motion.arcsec(0)).isCloseTo(0.2 * RATE, within(1e-12));
  }

  @Test
  void withoutPulseColumnsTheMotionStaysHidden() {
    Frames frames = new FramesBuilder().add(0, 0, 0).add(3, 1, 1).build();
    Answer<MotionSeries> answer =
        Reconstruction.of(SETTINGS.of(frames), Axis.RA, Equipment.UNKNOWN).map(Reconstruction::sky);
    assertThat(answer.value()).isEmpty();
    assertThat(answer.because()).contains("no pulses");
  }

  /** The posterior tells strengths in multiples of it, whatever the mount does. */
  @Test
  void withoutAGuideRatePulsesAreTakenToMoveByHalfTheTurnOfTheSky() {
    Runs settings = Runs.NOTHING_KNOWN.declination(10);
    MotionSeries undeclared =
        Reconstruction.of(settings.of(guided()), Axis.RA, Equipment.UNKNOWN)
            .map(Reconstruction::sky)
            .value()
            .orElseThrow();
    MotionSeries half =
        Reconstruction.of(settings.guideRate(0.5).of(guided()), Axis.RA, Equipment.UNKNOWN)
            .map(Reconstruction::sky)
            .value()
            .orElseThrow();
    assertThat(undeclared.arcsec()).containsExactly(half.arcsec());
  }

  @Test
  void withoutADeclinationRightAscensionIsHiddenAndDeclinationIsNot() {
    Runs settings = Runs.NOTHING_KNOWN.guideRate(0.5);
    Answer<MotionSeries> ra =
        Reconstruction.of(settings.of(guided()), Axis.RA, Equipment.UNKNOWN)
            .map(Reconstruction::sky);
    assertThat(ra.value()).isEmpty();
    assertThat(ra.because()).contains("declination");
    assertThat(
            Reconstruction.of(settings.of(guided()), Axis.DEC, Equipment.UNKNOWN)
                .map(Reconstruction::sky)
                .value())
        .isPresent();
  }

  @Test
  void axisThatWasNeverPushedNeedsNoRate() {
    Frames frames =
        new FramesBuilder().add(0, 0, 0.5).pulses(100, 0).add(3, 0, 0.7).pulses(90, 0).build();
    MotionSeries dec =
        Reconstruction.of(Runs.NOTHING_KNOWN.of(frames), Axis.DEC, Equipment.UNKNOWN)
            .map(Reconstruction::sky)
            .value()
            .orElseThrow();
    assertThat(dec.arcsec()).containsExactly(0.5, 0.7);
  }

  @Test
  void unguidedMotionIsTheOffset() {
    Frames frames =
        new FramesBuilder().add(0, 0.1, 0).pulses(0, 0).add(3, 0.4, 0).pulses(0, 0).build();
    MotionSeries ra =
        Reconstruction.of(Runs.NOTHING_KNOWN.of(frames), Axis.RA, Equipment.UNKNOWN)
            .map(Reconstruction::sky)
            .value()
            .orElseThrow();
    assertThat(ra.arcsec()).containsExactly(0.1, 0.4);
  }

  @Test
  void pulsesOfLostFramesCountAndSettlingFramesTakePart() {
    Frames frames =
        new FramesBuilder()
            .add(0, 0, 0)
            .pulses(0, 100)
            .add(3, Double.NaN, Double.NaN)
            .pulses(0, 100)
            .state(FrameState.LOST)
            .add(6, 0, 0)
            .pulses(0, 0)
            .state(FrameState.SETTLING)
            .build();
    assertThat(sky(frames, Axis.DEC).arcsec()[1]).isCloseTo(0.2 * RATE, within(1e-12));
  }

  private static MotionSeries sky(Frames frames, Axis axis) {
    return Reconstruction.of(SETTINGS.of(frames), axis, Equipment.UNKNOWN)
        .map(Reconstruction::sky)
        .value()
        .orElseThrow();
  }

  private static double mountRa(double seconds) {
    return 5 * Math.sin(seconds / 70) + 0.002 * seconds;
  }

  private static double mountDec(double seconds) {
    return 0.01 * seconds;
  }

  /**
   * A loop of gain 0.7 that works exactly: what a pulse took away is gone before the next exposure.
   * One frame is lost, and the set point moves twice by a known shift.
   */
  private static Frames guided() {
    FramesBuilder builder = new FramesBuilder();
    double pushedRa = 0;
    double pushedDec = 0;
    double setRa = 0;
    double setDec = 0;
    for (int i = 0; i < 200; i++) {
      double seconds = 3 * i;
      boolean dither = i == 60 || i == 140;
      setRa += dither ? 2.5 : 0;
      setDec += dither ? -1.5 : 0;
      double ra = mountRa(seconds) - pushedRa - setRa;
      double dec = mountDec(seconds) - pushedDec - setDec;
      double raMillis = Math.max(-900, Math.min(900, 700 * ra / (RATE * COSINE)));
      double decMillis = Math.max(-900, Math.min(900, 700 * dec / RATE));
      boolean lost = i == 90;
      builder.add(seconds, lost ? Double.NaN : ra, lost ? Double.NaN : dec);
      builder.pulses(raMillis, decMillis);
      if (dither) {
        builder.dither(2.5, -1.5);
      }
      if (lost) {
        builder.state(FrameState.LOST);
      }
      pushedRa += raMillis / 1000 * RATE * COSINE;
      pushedDec += decMillis / 1000 * RATE;
    }
    return builder.build();
  }
}
