package io.github.roundstar.diagnosis.finding;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Axis;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.NightResult;
import io.github.roundstar.results.RunResult;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What the night's trailing is made of: mean squares of both axes after each exposure's mean is
 * removed, over all runs that have a budget, weighted by used frames.
 *
 * <p>An axis without a budget counts with its whole mean square, so that the other's shares are not
 * taken for too much.
 */
final class TrailingBudget {
  /**
   * Some parts together.
   *
   * @param trailingArcsec2 their mean square after each exposure's mean is removed [arcsec^2]
   * @param meanSquareArcsec2 their mean square about the set point [arcsec^2]
   */
  record Part(double trailingArcsec2, double meanSquareArcsec2) {
    static final Part NOTHING = new Part(0, 0);

    Part plus(Part other) {
      return new Part(
          trailingArcsec2 + other.trailingArcsec2, meanSquareArcsec2 + other.meanSquareArcsec2);
    }

    Part times(double factor) {
      return new Part(trailingArcsec2 * factor, meanSquareArcsec2 * factor);
    }
  }

  private final Map<Axis, Map<String, Part>> parts = new EnumMap<>(Axis.class);
  private final Map<Axis, Double> trailingArcsec2 = new EnumMap<>(Axis.class);

  private TrailingBudget() {}

  /** Gathers the runs' budgets; empty when no run has one. */
  static Optional<TrailingBudget> of(NightResult night) {
    TrailingBudget budget = new TrailingBudget();
    double frames = 0;
    for (RunResult run : night.runs()) {
      if (run.budget() != null && run.counts().used() > 0) {
        frames += run.counts().used();
      }
    }
    if (frames == 0) {
      return Optional.empty();
    }
    for (RunResult run : night.runs()) {
      if (run.budget() != null) {
        double weight = run.counts().used() / frames;
        budget.add(Axis.RA, run.budget().ra(), weight, trailing(run, Axis.RA));
        budget.add(Axis.DEC, run.budget().dec(), weight, trailing(run, Axis.DEC));
      }
    }
    return Optional.of(budget);
  }

  /** One run's budget. */
  static TrailingBudget of(Budget one) {
    TrailingBudget budget = new TrailingBudget();
    budget.add(Axis.RA, one.ra(), 1, one.raTrailingArcsec2());
    budget.add(Axis.DEC, one.dec(), 1, one.decTrailingArcsec2());
    return budget;
  }

  /** Trailing mean square of an axis of a run; its whole one where there is no budget. */
  private static double trailing(RunResult run, Axis axis) {
    Double told =
        axis == Axis.RA ? run.budget().raTrailingArcsec2() : run.budget().decTrailingArcsec2();
    if (told != null) {
      return told;
    }
    if (run.guided() == null) {
      return 0;
    }
    double rms = axis == Axis.RA ? run.guided().ra().rmsArcsec() : run.guided().dec().rmsArcsec();
    return rms * rms;
  }

  private void add(Axis axis, List<BudgetPart> of, double weight, double trailing) {
    trailingArcsec2.merge(axis, weight * trailing, Double::sum);
    for (BudgetPart part : of == null ? List.<BudgetPart>of() : of) {
      Part weighted =
          new Part(part.shareOfTrailing() * trailing, part.meanSquareArcsec2()).times(weight);
      parts.computeIfAbsent(axis, key -> new HashMap<>()).merge(part.cause(), weighted, Part::plus);
    }
  }

  /** Trailing mean square of both axes [arcsec^2]. */
  double trailingArcsec2() {
    return trailingArcsec2(Axis.RA) + trailingArcsec2(Axis.DEC);
  }

  /** Trailing mean square of one axis [arcsec^2]. */
  double trailingArcsec2(Axis axis) {
    return trailingArcsec2.getOrDefault(axis, 0.0);
  }

  /** The parts of an axis whose cause fits. */
  Part part(Axis axis, Predicate<String> cause) {
    return parts.getOrDefault(axis, Map.of()).entrySet().stream()
        .filter(entry -> cause.test(entry.getKey()))
        .map(Map.Entry::getValue)
        .reduce(Part.NOTHING, Part::plus);
  }

  /** The parts of both axes whose cause fits. */
  Part part(Predicate<String> cause) {
    return part(Axis.RA, cause).plus(part(Axis.DEC, cause));
  }

  /**
   * Share of a part in the radial trailing mean square, with what the budget may be off and the
   * relative interval of the figure behind the part.
   *
   * @param lowFactor lower bound of the figure's mean square over its value, 0..1
   * @param highFactor upper bound over value, 1 or more
   */
  Estimate share(Part part, double lowFactor, double highFactor) {
    double whole = trailingArcsec2();
    if (whole <= 0) {
      return new Estimate(0, 0, 0);
    }
    double value = part.trailingArcsec2();
    double allowed = Thresholds.BUDGET_RELATIVE * Math.abs(value) + Thresholds.BUDGET_ARCSEC2;
    double below = Math.hypot(value * (1 - lowFactor), allowed);
    double above = Math.hypot(value * (highFactor - 1), allowed);
    return new Estimate(value, value - below, value + above).times(1 / whole);
  }

  /** The same for a part whose mean square goes with the square of a figure. */
  Estimate shareOfSquare(Part part, Estimate figure) {
    if (figure.covers(0) || figure.value() == 0) {
      double high = figure.value() == 0 ? 2 : Math.pow(reach(figure) / figure.value(), 2);
      return share(part, 0, Math.max(1, high));
    }
    double low = Math.min(Math.abs(figure.lo95()), Math.abs(figure.hi95())) / figure.value();
    double high = reach(figure) / figure.value();
    return share(part, low * low, high * high);
  }

  private static double reach(Estimate figure) {
    return Math.max(Math.abs(figure.lo95()), Math.abs(figure.hi95()));
  }
}
