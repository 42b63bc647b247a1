package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Turns laid over each other show the curve, whatever drift, wander and runs lay between them. */
@Tag("identity")
class FoldedTurnsTest {
  private static final Gears WORM = new Gears(OptionalDouble.of(479), List.of());

  /** Noise of a tenth of the usual; 15 turns of 479 s fill 7200 s. */
  private static final PlainNights NIGHT = PlainNights.WITH_WORM.noise(0.05).with(71, 0.9, 0);

  @Test
  void turnsFollowTheCurveAndAgree() {
    PeriodicError found = fit(NIGHT.run(1, 1));
    FoldedTurns folded = found.folded().value().orElseThrow();
    assertThat(folded.turns()).isEqualTo(15);
    follows(folded, found.curve().value().orElseThrow());
    for (int bin = 0; bin < FoldedTurns.BINS; bin++) {
      // A turn wanders by some 0.02 sqrt(479) = 0.4 arcsec from end to end, half of it in the mean.
      assertThat(folded.spread(bin)).isBetween(0.01, 0.5);
    }
  }

  @Test
  void runsWithAnotherPhaseFallOnTheSameCurve() {
    PeriodicError found = fit(NIGHT.run(1, 1), NIGHT.late(137).frames(1500).run(2, 2));
    FoldedTurns folded = found.folded().value().orElseThrow();
    // The second run holds 9.4 turns, the first of them begun late.
    assertThat(folded.turns()).isBetween(23, 25);
    follows(folded, found.curve().value().orElseThrow());
  }

  @Test
  void unknownStepInsideATurnIsClosed() {
    AxisRun run = NIGHT.run(1, 1);
    boolean[] starts = run.motion().startsPiece();
    double[] arcsec = run.motion().arcsec();
    starts[1000] = true;
    for (int i = 1000; i < arcsec.length; i++) {
      arcsec[i] += 30;
    }
    PeriodicError found = fit(NIGHT.run(1, run.motion().seconds(), arcsec, starts));
    follows(found.folded().value().orElseThrow(), found.curve().value().orElseThrow());
  }

  private static PeriodicError fit(AxisRun... runs) {
    return PeriodicError.of(List.of(runs), WORM).value().orElseThrow();
  }

  private static void follows(FoldedTurns folded, TurnCurve curve) {
    for (int bin = 0; bin < FoldedTurns.BINS; bin++) {
      double centre = 2 * Math.PI * (bin + 0.5) / FoldedTurns.BINS;
      assertThat(folded.mean(bin)).isCloseTo(curve.at(centre), within(0.25));
      double sum = 0;
      for (int turn = 0; turn < folded.turns(); turn++) {
        sum += folded.turn(turn, bin);
      }
      assertThat(folded.mean(bin)).isCloseTo(sum / folded.turns(), within(1e-12));
    }
  }
}
