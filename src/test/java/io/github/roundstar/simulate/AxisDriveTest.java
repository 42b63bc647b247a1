package io.github.roundstar.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the motor does reaches the tube late, and exactly as play and stiction say. */
class AxisDriveTest {
  /**
   * Pulse test, play 2: six pulses of +0.5, twelve of -0.5, eight of +0.5, engaged for positive
   * moves at first. Direct evaluation of the play operator in Python.
   */
  @Test
  @Tag("published")
  void reversalLosesThePlayOnce() {
    AxisDrive drive = new AxisDrive(2, 0, 1);
    double motorAtStart = drive.motorArcsec();
    for (int i = 0; i < 6; i++) {
      assertThat(drive.push(1, 0.5).totalArcsec()).isEqualTo(0.5);
    }
    for (int i = 0; i < 12; i++) {
      assertThat(drive.push(-1, 0.5).totalArcsec()).isEqualTo(i < 4 ? 0 : -0.5);
    }
    for (int i = 0; i < 8; i++) {
      assertThat(drive.push(1, 0.5).totalArcsec()).isEqualTo(i < 4 ? 0 : 0.5);
    }

    assertThat(drive.motorArcsec() - motorAtStart).isEqualTo(1);
    assertThat(drive.tubeArcsec()).isEqualTo(1);
  }

  /** Play 1.2 and stiction 0.3, against the two operators stepped in microseconds. */
  @Test
  @Tag("identity")
  void tubeMovesAsTheOperatorsSteppedFinely() {
    AxisDrive drive = new AxisDrive(1.2, 0.3, -0.4);
    Play play = new Play(1.2, 0);
    double motor = drive.motorArcsec();
    double tube = 0;
    double[] speeds = {7.5, -7.2, 7.5, 7.5, -7.2, -7.2};
    double[] seconds = {0.2, 0.05, 0.03, 0.4, 0.5, 0.1};
    int steps = 50_000;
    for (int p = 0; p < speeds.length; p++) {
      double before = tube;
      Move move = drive.push(speeds[p], seconds[p]);
      double sum = 0;
      boolean sliding = false;
      for (int i = 0; i < steps; i++) {
        motor += speeds[p] * seconds[p] / steps;
        double driven = play.follow(motor);
        sliding = sliding || Math.abs(driven - tube) > 0.3;
        tube = sliding ? driven : tube;
        sum += tube - before;
      }
      assertThat(drive.tubeArcsec()).isCloseTo(tube, within(1e-9));
      assertThat(move.meanArcsec(0, seconds[p])).isCloseTo(sum / steps, within(1e-4));
    }
  }

  @Test
  @Tag("identity")
  void pulseThatRunsIntoAnExposureIsSplitByTime() {
    Move move = new Move(0.2, 0.1, 5, 1);

    // At rest, then 0.1 + 5 (t - 0.2) until 1 s, then 4.1.
    assertThat(move.totalArcsec()).isCloseTo(4.1, within(1e-12));
    assertThat(move.meanArcsec(-3, 0.2)).isEqualTo(0);
    assertThat(move.meanArcsec(0.2, 1)).isCloseTo(0.1 + 2, within(1e-12));
    assertThat(move.meanArcsec(1, 7)).isCloseTo(4.1, within(1e-12));
    assertThat(move.meanArcsec(0.6, 1.4)).isCloseTo((0.4 * 3.1 + 0.4 * 4.1) / 0.8, within(1e-12));
  }
}
