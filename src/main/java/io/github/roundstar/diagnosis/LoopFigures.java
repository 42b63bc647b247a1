package io.github.roundstar.diagnosis;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Controller;
import io.github.roundstar.motion.ErrorBudget;
import io.github.roundstar.motion.LoopFit;
import io.github.roundstar.motion.LoopTheory;
import io.github.roundstar.results.AxisLoopResult;
import io.github.roundstar.results.Budget;
import io.github.roundstar.results.BudgetPart;
import io.github.roundstar.results.Loop;
import java.util.List;
import java.util.OptionalDouble;

/** The guide loop of a run and the budget of its mean square, as the result shows them. */
final class LoopFigures {
  private final LoopStudy ra;
  private final LoopStudy dec;
  private final Reasons.Scope scope;

  LoopFigures(LoopStudy ra, LoopStudy dec, Reasons.Scope scope) {
    this.ra = ra;
    this.dec = dec;
    this.scope = scope;
  }

  /** How the loop behaved. */
  Loop loop() {
    return new Loop(loop("/loop/ra", ra), loop("/loop/dec", dec));
  }

  /** What the mean square is made of. */
  Budget budget() {
    return new Budget(
        budget("/budget/ra", ra),
        budget("/budget/dec", dec),
        scope.orNull("/budget/raTrailingArcsec2", ra.budget().map(ErrorBudget::trailingArcsec2)),
        scope.orNull("/budget/decTrailingArcsec2", dec.budget().map(ErrorBudget::trailingArcsec2)));
  }

  private AxisLoopResult loop(String figure, LoopStudy study) {
    LoopFit fit = scope.orNull(figure, study.law());
    if (fit == null) {
      return null;
    }
    Controller law = fit.law();
    return new AxisLoopResult(
        scope.orNull(figure + "/gain", study.gain()),
        law.deadbandArcsec(),
        law.delayFrames(),
        fit.lag1Autocorrelation(),
        fit.explainedShare(),
        law.memory(),
        scope.orNull(
            figure + "/pulseLimitMillis", limit(fit), "no pulse was long enough to meet a limit"),
        fit.shortestMillis(),
        declared(figure + "/declaredGain", study.declared().gain()),
        declared(figure + "/declaredDeadbandArcsec", study.declared().deadbandArcsec()),
        scope.orNull(
            figure + "/noiseAmplification", study.gain().then(gain -> amplification(gain, law))));
  }

  private static OptionalDouble limit(LoopFit fit) {
    Controller law = fit.law();
    return fit.limitSeen()
        ? OptionalDouble.of(
            finite(Math.max(finite(-law.lowestMillis()), finite(law.highestMillis()))))
        : OptionalDouble.empty();
  }

  private static double finite(double value) {
    return Double.isFinite(value) ? value : 0;
  }

  private Double declared(String figure, OptionalDouble setting) {
    return scope.orNull(figure, setting, "the log does not tell this setting");
  }

  private static Answer<Double> amplification(Estimate gain, Controller law) {
    if (law.memory() > 0 || law.delayFrames() > 0) {
      return Answer.none("the closed form holds for loops without memory and delay only");
    }
    double amplification = LoopTheory.noiseAmplification(gain.value());
    return Double.isFinite(amplification)
        ? Answer.of(amplification)
        : Answer.none("with a gain of 2 and more the loop swings ever wider");
  }

  private List<BudgetPart> budget(String figure, LoopStudy study) {
    return scope.orNull(
        figure,
        study.budget().map(budget -> budget.parts().stream().map(LoopFigures::part).toList()));
  }

  private static BudgetPart part(ErrorBudget.Part part) {
    return new BudgetPart(part.cause(), part.meanSquareArcsec2(), part.shareOfTrailing());
  }
}
