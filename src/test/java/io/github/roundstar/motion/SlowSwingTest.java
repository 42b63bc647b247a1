package io.github.roundstar.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.WhiteRegression;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Runs that hold too few turns of the worm to tell it. */
@Tag("identity")
class SlowSwingTest {
  /** Sixteen minutes: two turns of 479 s. */
  private static final int SHORT = 320;

  private static final int NIGHTS = 100;

  private static final List<Family> WORM =
      List.of(Family.ofPeriod(479, 1, Family.UNLABELLED).withHarmonic(2));

  /** By sums over a fine grid: the closed form in the code comes from integrals. */
  @Test
  void columnsHaveNeitherDriftNorBend() {
    double[] seconds = new double[20_001];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = 0.05 * i;
    }
    AxisRun run =
        PlainNights.USUAL
            .run(1, seconds, new double[seconds.length], new boolean[seconds.length])
            .swinging(7);
    for (double[] column : SlowSwing.columns(run, run.phaseSeconds())) {
      double drift = 0;
      double bend = 0;
      for (int i = 0; i < seconds.length; i++) {
        double x = seconds[i] / 500 - 1;
        drift += column[i] * x / seconds.length;
        bend += column[i] * (x * x - 1.0 / 3) / seconds.length;
      }
      assertThat(drift).isCloseTo(0, within(2e-4));
      assertThat(bend).isCloseTo(0, within(2e-4));
    }
  }

  /**
   * Worms of fewer than three turns, any phase: what the path lacks is far below the noise of a
   * frame.
   */
  @Test
  void pathComesNearTheSwingOfAnyCommonWorm() {
    for (double period : new double[] {320, 400, 479, 640}) {
      for (int phase = 0; phase < 6; phase++) {
        AxisRun run =
            new PlainNights(SHORT, 0, 0, 0.3, 0, 0, List.of())
                .with(period, 6, phase)
                .run(1, 1)
                .swinging(10);
        WhiteRegression fit =
            WhiteRegression.of(
                run.motion().arcsec(), withLevel(ToneColumns.withDrift(run, List.of())));
        assertThat(Math.sqrt(fit.sumOfSquares() / SHORT)).as("period %f", period).isLessThan(0.1);
      }
    }
  }

  private static double[][] withLevel(double[][] columns) {
    double[][] more = new double[columns.length + 1][];
    System.arraycopy(columns, 0, more, 0, columns.length);
    more[columns.length] = new double[columns[0].length];
    Arrays.fill(more[columns.length], 1);
    return more;
  }

  /** Against the same nights without a worm; the interval against the truth. */
  @Test
  void noiseIsToldBesideTheSwing() {
    double noise = 0;
    double ofPlain = 0;
    int covered = 0;
    for (int seed = 1; seed <= NIGHTS; seed++) {
      AxisRun run = SlowSwing.beside(PlainNights.WITH_WORM.frames(SHORT).run(1, seed), List.of());
      assertThat(run.swings()).isEqualTo(10);
      Estimate floor = noise(run);
      noise += floor.value() / NIGHTS;
      ofPlain += noise(PlainNights.USUAL.frames(SHORT).run(1, seed)).value() / NIGHTS;
      covered += floor.covers(PlainNights.USUAL.noiseArcsec()) ? 1 : 0;
    }
    assertThat(noise / ofPlain).isCloseTo(1, within(0.01));
    assertThat(covered).isBetween(88, 99);
  }

  private static Estimate noise(AxisRun run) {
    MotionSeries motion = run.motion();
    double[][] columns = ToneColumns.withDrift(run, List.of());
    return RunBackground.of(run, List.of())
        .orElseThrow()
        .wanderNoise()
        .measured(motion.seconds(), motion.startsPiece(), motion.arcsec(), columns)
        .noise()
        .orElseThrow();
  }

  @Test
  void wanderAloneNeedsNoSwing() {
    int taken = 0;
    for (int seed = 1; seed <= NIGHTS; seed++) {
      AxisRun run = PlainNights.USUAL.frames(SHORT).run(1, seed);
      taken += SlowSwing.beside(run, List.of()).swings() > 0 ? 1 : 0;
    }
    assertThat(taken).isLessThanOrEqualTo(1);
  }

  @Test
  void sinusoidsThatTellTheSwingLeaveNone() {
    int taken = 0;
    for (int seed = 1; seed <= 20; seed++) {
      AxisRun run = PlainNights.WITH_WORM.frames(560).run(1, seed);
      taken += SlowSwing.beside(run, WORM).swings() > 0 ? 1 : 0;
    }
    assertThat(taken).isZero();
  }

  @Test
  void longRunsHaveNone() {
    AxisRun run = PlainNights.WITH_WORM.frames(642).run(1, 1);

    assertThat(run.motion().spanSeconds()).isGreaterThan(SlowSwing.LONG_ENOUGH_SECONDS - 1);
    assertThat(SlowSwing.beside(run, List.of())).isSameAs(run);
  }

  @Test
  void runsThatAreLongTogetherHaveNone() {
    AxisRun run = PlainNights.WITH_WORM.frames(SHORT).run(1, 1).swinging(10);

    assertThat(SlowSwing.together(List.of(run))).containsExactly(run);
    assertThat(SlowSwing.together(List.of(run, run, run)))
        .allSatisfy(each -> assertThat(each.swings()).isZero());
  }
}
