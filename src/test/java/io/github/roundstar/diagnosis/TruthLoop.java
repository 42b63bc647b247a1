package io.github.roundstar.diagnosis;

import io.github.roundstar.formats.FormatException;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.motion.MotionSplit;
import io.github.roundstar.results.AxisScatter;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import io.github.roundstar.simulate.SimulatedNight;
import io.github.roundstar.simulate.SimulatedRun;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * The rows of {@link TruthTable} on the loop: the budget, and the night guided again.
 *
 * @param kind the case
 * @param column a row by its name
 */
record TruthLoop(TruthCase kind, Function<String, TruthColumn> column) {
  /** Gains that the night is guided with again: the table of settings has rows for them. */
  private static final double[] OTHER_GAINS = {0.3, 1.0};

  /** Both axes' parts. */
  void budget(RunResult found, SimulatedNight night) {
    budget(found.budget().ra(), found.guided().ra(), truth(night, Axis.RA));
    budget(found.budget().dec(), found.guided().dec(), truth(night, Axis.DEC));
  }

  private static Map<String, Double> truth(SimulatedNight night, Axis axis) {
    return BudgetTruth.of(night.runs().get(0), axis, night.scenario());
  }

  private void budget(List<BudgetPart> parts, AxisScatter scatter, Map<String, Double> truth) {
    if (parts == null) {
      return;
    }
    double whole = Math.pow(scatter.rmsArcsec(), 2) + Math.pow(scatter.meanArcsec(), 2);
    double periodic = 0;
    double trulyPeriodic =
        truth.entrySet().stream()
            .filter(part -> part.getKey().startsWith(MotionSplit.PERIODIC))
            .mapToDouble(Map.Entry::getValue)
            .sum();
    for (BudgetPart part : parts) {
      if (part.cause().startsWith(MotionSplit.PERIODIC)) {
        periodic += part.meanSquareArcsec2();
      } else if (part.cause().equals("remainder")) {
        column.apply("budget, remainder [arcsec^2]").add(part.meanSquareArcsec2(), 0.1 * whole);
      } else if (part.cause().equals(MotionSplit.WANDER) && kind.wormUnresolved()) {
        part("wander", part.meanSquareArcsec2(), truth.get(part.cause()) + trulyPeriodic);
      } else if (truth.containsKey(part.cause())) {
        part(part.cause(), part.meanSquareArcsec2(), truth.get(part.cause()));
      }
    }
    part("periodic", periodic, kind.wormUnresolved() ? 0 : trulyPeriodic);
    // A budget without jolts says that there were none, which is right or wrong as well.
    if (parts.stream().noneMatch(part -> part.cause().equals("jolts"))) {
      part("jolts", 0, truth.getOrDefault("jolts", 0.0));
    }
  }

  private void part(String cause, double found, double truth) {
    column
        .apply("budget, " + cause + " [arcsec^2]")
        .add(found - truth, 0.15 * Math.abs(truth) + 0.01);
  }

  /**
   * Rows of the table of settings against the simulator's own run with that gain in the row's axis,
   * the other guided as it was.
   */
  void replay(NightResult result, int seed) throws FormatException {
    for (double gain : OTHER_GAINS) {
      SimulatedRun otherRa = kind.night(seed, gain, kind.gain()).runs().get(0);
      SimulatedRun otherDec = kind.night(seed, kind.gain(), gain).runs().get(0);
      replay(result, gain, Axis.RA, BudgetTruth.rmsArcsec(otherRa, Axis.RA));
      replay(result, gain, Axis.DEC, BudgetTruth.rmsArcsec(otherDec, Axis.DEC));
    }
  }

  private void replay(NightResult result, double gain, Axis axis, double[] truth) {
    if (result.replay() == null) {
      return;
    }
    String name = axis == Axis.RA ? "ra" : "dec";
    result.replay().stream()
        .filter(row -> row.axis().equals(name) && !row.trained() && !row.current())
        .filter(row -> Math.abs(row.gain() - gain) < 1e-9)
        .filter(row -> row.cadenceSeconds() < 4)
        .filter(row -> Math.abs(row.deadbandArcsec() - kind.deadbandArcsec()) < 0.05)
        .findFirst()
        .ifPresent(
            row -> {
              column
                  .apply("guided again, logged RMS [share]")
                  .add(row.predictedLoggedRmsArcsec() / truth[0] - 1, 0.1);
              column
                  .apply("guided again, true RMS [share]")
                  .add(row.predictedMotionRmsArcsec() / truth[1] - 1, 0.1);
            });
  }
}
