package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The drift's interval carries the wander. */
@Tag("identity")
class MountDriftTest {
  @Test
  void intervalHoldsTheTruthAsOftenAsItSays() {
    int covered = 0;
    double error = 0;
    double half = 0;
    for (long seed = 0; seed < 100; seed++) {
      Estimate drift = drift(PlainNights.USUAL.frames(1500).drift(-0.4).run(1, seed));
      covered += drift.covers(-0.4) ? 1 : 0;
      error += Math.pow(drift.value() + 0.4, 2) / 100;
      half += (drift.hi95() - drift.value()) / 100;
    }
    assertThat(covered).isBetween(88, 99);
    // A walk of 0.02 arcsec per root second over 4500 s alone hides a drift of 0.018 arcsec/min.
    assertThat(Math.sqrt(error)).isBetween(0.7 * 0.0179, 1.3 * 0.0179);
    assertThat(half).isBetween(0.8 * 1.96 * 0.0179, 1.3 * 1.96 * 0.0179);
  }

  @Test
  void piecesOfUnknownLevelChangeNothing() {
    AxisRun run = PlainNights.USUAL.run(1, 5);
    boolean[] starts = run.motion().startsPiece();
    double[] stepped = run.motion().arcsec();
    for (int i = 0; i < stepped.length; i++) {
      starts[i] = i % 400 == 0;
      stepped[i] += 10 * (i / 400) * (i / 400);
    }
    double[] seconds = run.motion().seconds();
    Estimate plain = drift(PlainNights.USUAL.run(1, seconds, run.motion().arcsec(), starts));
    Estimate moved = drift(PlainNights.USUAL.run(1, seconds, stepped, starts));
    assertThat(moved.value()).isCloseTo(plain.value(), within(1e-6));
    assertThat(moved.hi95()).isCloseTo(plain.hi95(), within(1e-6));
    assertThat(moved.covers(0.3)).isTrue();
  }

  @Test
  void withoutFramesThereIsAReason() {
    assertThat(MountDrift.of(PlainNights.USUAL.frames(0).run(1, 1)).because()).contains("few");
    assertThat(MountDrift.of(PlainNights.USUAL.frames(10).run(1, 1)).because()).contains("few");
  }

  private static Estimate drift(AxisRun run) {
    return MountDrift.of(run).value().orElseThrow().arcsecPerMinute();
  }
}
