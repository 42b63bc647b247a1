package io.github.roundstar.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.roundstar.diagnosis.exposures.GuidedRun;
import io.github.roundstar.diagnosis.exposures.StarTrack;
import io.github.roundstar.model.Equipment;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.ErrorBudget;
import io.github.roundstar.motion.StarScatter;
import io.github.roundstar.results.Faults;
import io.github.roundstar.results.Replay;
import io.github.roundstar.simulate.ScenarioReader;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import io.github.roundstar.simulate.Simulation;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guided nights with known truth: the loop's gain, the budget of the mean square against {@link
 * BudgetTruth}, and the night guided again against the simulator's own run at another gain.
 */
@Tag("identity")
class KnownLoopTest {
  private static final double[] OTHER_GAINS = {0.3, 1.0};

  /** Share and arcsec^2 that a part may be off; the bound asked for. */
  private static final double SHARE = 0.15;

  private static final double ABSOLUTE = 0.01;

  private static final String GUSTS =
      """
      [gusts]
      per_hour = 20
      amplitude_arcsec = 3
      duration_s = 12
      """;

  private static final Equipment EQUIPMENT =
      new Equipment(
          Equipment.UNKNOWN.site(),
          new Equipment.Mount(
              Optional.empty(),
              OptionalDouble.of(479),
              OptionalDouble.empty(),
              Optional.empty(),
              List.of()),
          Equipment.UNKNOWN.guide(),
          Equipment.UNKNOWN.imaging(),
          OptionalDouble.empty(),
          // With a limit to the RMS, motion counts about the mean of the run.
          new Equipment.Limits(Equipment.Limits.USUAL_ELONGATION, OptionalDouble.of(0.5)));

  /** What many axes gave: how many lay within the bounds. */
  private static final class Tally {
    private int gains;
    private int gainsCovered;
    private int parts;
    private int partsRight;
    private int remaindersSmall;
    private int budgets;
    private int replays;
    private int replaysRight;
    private int savings;
    private int savingsCovered;
    private final StringBuilder wrong = new StringBuilder();

    void note(Object... what) {
      wrong.append(List.of(what)).append('\n');
    }
  }

  @ParameterizedTest(name = "gain {0}, noise {1}, play {2}, deadband {3}, gusts {4}")
  @CsvSource({
    "0.3, 0.45, 0, 0.1, false",
    "0.6, 0.45, 3, 0.1, false",
    "0.9, 0.45, 0, 0.3, false",
    "0.6, 0.30, 3, 1.0, false",
    "0.6, 0.30, 0, 0.1, true"
  })
  void loopBudgetAndReplayAreRecovered(
      double gain, double noise, double play, double deadband, boolean gusts) throws Exception {
    Tally tally = play(4, gain, noise, play, deadband, gusts);

    assertThat(tally.partsRight).as(tally.wrong.toString()).isEqualTo(tally.parts);
    assertThat(tally.remaindersSmall).as(tally.wrong.toString()).isEqualTo(tally.budgets);
    assertThat(tally.replaysRight).as(tally.wrong.toString()).isEqualTo(tally.replays);
    // Fewer than six of eight 95 % intervals hold by chance once in 170 times.
    assertThat(tally.gainsCovered).isGreaterThanOrEqualTo(tally.gains - 2);
    assertThat(tally.savingsCovered)
        .as(tally.wrong.toString())
        .isGreaterThanOrEqualTo(tally.savings - 2);
    assertThat(tally.budgets).isEqualTo(8);
    assertThat(tally.replays).isEqualTo(8 * OTHER_GAINS.length);
  }

  /** A hundred axes of each kind. */
  @Tag("long")
  @ParameterizedTest(name = "gain {0}, noise {1}, play {2}, deadband {3}, gusts {4}")
  @CsvSource({
    "0.3, 0.20, 0, 0.1, false",
    "0.3, 0.80, 3, 0.1, false",
    "0.6, 0.45, 0, 0.3, false",
    "0.6, 0.30, 3, 1.0, false",
    "0.6, 0.45, 3, 0.1, false",
    "0.9, 0.20, 0, 0.1, false",
    "0.9, 0.80, 0, 0.1, false",
    "0.6, 0.30, 0, 0.1, true"
  })
  void loopBudgetAndReplayAreRecoveredOnManyNights(
      double gain, double noise, double play, double deadband, boolean gusts) throws Exception {
    Tally tally = play(50, gain, noise, play, deadband, gusts);

    assertThat(tally.gainsCovered).isBetween(88, 99);
    assertThat(tally.partsRight)
        .as(tally.wrong.toString())
        .isGreaterThanOrEqualTo((int) (0.99 * tally.parts));
    assertThat(tally.remaindersSmall).isGreaterThanOrEqualTo(99);
    assertThat(tally.savingsCovered)
        .as(tally.wrong.toString())
        .isGreaterThanOrEqualTo((int) (0.88 * tally.savings));
    assertThat(tally.replaysRight)
        .as(tally.wrong.toString())
        .isGreaterThanOrEqualTo((int) (0.97 * tally.replays));
  }

  private static Tally play(
      int nights, double gain, double noise, double play, double deadband, boolean gusts)
      throws Exception {
    Tally tally = new Tally();
    for (int seed = 1; seed <= nights; seed++) {
      SimulatedNight night = night(seed, gain, noise, play, deadband, gusts);
      SimulatedRun run = night.runs().get(0);
      RunStudy study = RunStudy.of(List.of(run.log()), EQUIPMENT, new Faults()).get(0);
      StarScatter scatter = StarScatter.of(run.log().frames()).orElseThrow();
      LoopStudy ra = LoopStudy.ra(study, EQUIPMENT);
      LoopStudy dec = LoopStudy.dec(study, EQUIPMENT);
      List<Replay> rows = rows(study, ra, dec);
      for (Axis axis : Axis.values()) {
        LoopStudy loop = axis == Axis.RA ? ra : dec;
        tally.gains++;
        tally.gainsCovered += loop.gain().value().orElseThrow().covers(gain) ? 1 : 0;
        double square =
            Math.pow(scatter.rmsArcsec(axis), 2) + Math.pow(scatter.meanArcsec(axis), 2);
        budget(
            tally,
            loop.budget().value().orElseThrow(),
            BudgetTruth.of(run, axis, night.scenario()),
            square);
        double used =
            rows.stream()
                .filter(row -> row.current() && row.axis().equals(name(axis)))
                .findFirst()
                .orElseThrow()
                .gain();
        for (double other : OTHER_GAINS) {
          Replay row = row(rows, axis, other, deadband);
          // What is told is what comes of so many times the gain in use.
          SimulatedRun again =
              night(seed, gain * other / used, noise, play, deadband, gusts).runs().get(0);
          double[] truth = BudgetTruth.rmsArcsec(again, axis);
          replay(tally, row, truth);
          saving(tally, row, BudgetTruth.rmsArcsec(run, axis)[1] - truth[1]);
        }
      }
    }
    return tally;
  }

  private static List<Replay> rows(RunStudy study, LoopStudy ra, LoopStudy dec) {
    StarTrack track = StarTrack.measured(study.run().frames(), Optional.empty(), Optional.empty());
    GuidedRun guided =
        new GuidedRun(study.run(), track, Optional.empty(), Optional.empty(), Optional.empty());
    return LadderFigures.of(
            List.of(guided),
            List.of(ra),
            List.of(dec),
            Optional.empty(),
            EQUIPMENT,
            Optional.empty(),
            0)
        .replay(EQUIPMENT)
        .value()
        .orElseThrow();
  }

  private static void budget(
      Tally tally, ErrorBudget budget, Map<String, Double> truth, double square) {
    tally.budgets++;
    double sum = 0;
    double trailing = 0;
    for (ErrorBudget.Part part : budget.parts()) {
      sum += part.meanSquareArcsec2();
      trailing += part.shareOfTrailing();
      if (part.cause().equals(ErrorBudget.REMAINDER)) {
        boolean small = Math.abs(part.meanSquareArcsec2()) <= 0.1 * square;
        tally.remaindersSmall += small ? 1 : 0;
        if (!small) {
          tally.note(part, square);
        }
      } else if (!part.cause().equals(ErrorBudget.STEADY)) {
        double expected = truth.getOrDefault(part.cause(), 0.0);
        boolean right =
            Math.abs(part.meanSquareArcsec2() - expected) <= SHARE * Math.abs(expected) + ABSOLUTE;
        tally.parts++;
        tally.partsRight += right ? 1 : 0;
        if (!right) {
          tally.note(part, expected);
        }
      }
    }
    assertThat(sum).isCloseTo(square, within(1e-9));
    assertThat(trailing).isCloseTo(1, within(1e-9));
  }

  private static void replay(Tally tally, Replay row, double[] truth) {
    double logged = row.predictedLoggedRmsArcsec() / truth[0] - 1;
    double motion = row.predictedMotionRmsArcsec() / truth[1] - 1;
    boolean right = Math.abs(logged) <= 0.1 && Math.abs(motion) <= 0.1;
    tally.replays++;
    tally.replaysRight += right ? 1 : 0;
    if (!right) {
      tally.note(row, logged, motion);
    }
  }

  private static Replay row(List<Replay> rows, Axis axis, double gain, double deadband) {
    return rows.stream()
        .filter(row -> row.axis().equals(name(axis)))
        .filter(row -> Math.abs(row.gain() - gain) < 1e-9)
        .filter(row -> !row.trained() && !row.current() && row.cadenceSeconds() < 4)
        .filter(row -> Math.abs(row.deadbandArcsec() - deadband) < 0.05)
        .findFirst()
        .orElseThrow();
  }

  private static String name(Axis axis) {
    return axis == Axis.RA ? "ra" : "dec";
  }

  private static void saving(Tally tally, Replay row, double truth) {
    boolean covered = row.lessMotionArcsec().covers(truth);
    tally.savings++;
    tally.savingsCovered += covered ? 1 : 0;
    if (!covered) {
      tally.note(row, truth);
    }
  }

  private static SimulatedNight night(
      int seed, double gain, double noise, double play, double deadband, boolean gusts)
      throws Exception {
    return Simulation.run(
        ScenarioReader.parse(
            "loop",
            KnownTruthTest.scenario(seed, gain, noise, 0.02)
                    .replace("deadband_arcsec = 0.1", "deadband_arcsec = " + deadband)
                + "dec_backlash_arcsec = "
                + play
                + "\n"
                + KnownTruthTest.WORM
                + (gusts ? GUSTS : "")));
  }
}
