package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Equipment;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.Simulation;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Pulses behind a play whose directions are unlike, against the play pulse by pulse ({@link
 * GearPlay}, which has a test of its own): offsets, and the motion with both strengths put in.
 */
@Tag("identity")
class TiedPulsesTest {
  private static final LostMotion PLAY = LostMotion.play(1.5, 0.25, 0.04);
  private static final double STEP = 0.003;
  private static Reconstruction made;

  @BeforeAll
  static void anyNight() throws Exception {
    String night =
        """
        [night]
        seed = 3
        [loop.dec]
        gain = 0.6
        [dither]
        every_min = 5
        size_arcsec = 4
        logs_shift = true
        [[run]]
        duration_min = 40
        declination_deg = 35
        [mount]
        guide_rate = 0.5
        dec_backlash_arcsec = 1.5
        """;
    made =
        Reconstruction.of(
                Simulation.run(ScenarioReader.parse("tied", night)).runs().get(0).log(),
                Axis.DEC,
                Equipment.UNKNOWN)
            .value()
            .orElseThrow();
  }

  /** What pulses pushed taken off again, the offsets are left, whatever is lost. */
  @Test
  void offsetsAreThoseOfTheLog() {
    double[] log = net(made.sky());
    double[] tied = net(new TiedPulses(made).motion(PLAY, STEP));
    for (int i = 0; i < log.length; i++) {
      assertThat(tied[i]).isCloseTo(log[i], within(1e-9));
    }
  }

  private static double[] net(MotionSeries motion) {
    return motion.answering(0, 0).arcsec();
  }

  /** At strengths as unlike as the play has them it is the motion behind the play itself. */
  @Test
  void answeringAsUnlikeItIsTheMotionBehindThePlay() {
    double oneWay = 0.97 * 1.04;
    double otherWay = 0.97 * 0.96;
    double[] direct = made.sky(PLAY).answering(oneWay, otherWay).arcsec();
    double[] tied = new TiedPulses(made).motion(PLAY, STEP).answering(oneWay, otherWay).arcsec();
    double[] column = new TiedPulses(made).column(PLAY);
    double[] log = net(made.sky());
    for (int i = 0; i < direct.length; i++) {
      assertThat(tied[i]).isCloseTo(direct[i], within(1e-9));
      assertThat(log[i] - 0.97 * column[i]).isCloseTo(direct[i], within(1e-9));
    }
  }

  /** A little more unlike, the motion changes as behind a play that is a little more unlike. */
  @Test
  void strengthsMoveWhatHappensInsideThePlay() {
    double more = STEP;
    LostMotion moreUnlike = LostMotion.play(1.5, 0.25, 0.04 + more);
    double[] direct = made.sky(moreUnlike).answering(1.04 + more, 0.96 - more).arcsec();
    double[] untied = made.sky(PLAY).answering(1.04 + more, 0.96 - more).arcsec();
    double[] tied =
        new TiedPulses(made).motion(PLAY, STEP).answering(1.04 + more, 0.96 - more).arcsec();

    assertThat(distance(untied, direct)).isGreaterThan(0.005);
    assertThat(distance(tied, direct)).isLessThan(0.2 * distance(untied, direct));
  }

  private static double distance(double[] one, double[] other) {
    double sum = 0;
    for (int i = 0; i < one.length; i++) {
      sum += (one[i] - other[i]) * (one[i] - other[i]);
    }
    return Math.sqrt(sum / one.length);
  }
}
