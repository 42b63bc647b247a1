package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WhiteRegression;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Drift of every run and sinusoids common to all runs, fitted together to the original times.
 *
 * <p>Every family of sinusoids has one period and one set of amplitudes for the whole night; in
 * each run it may start at another place, since a slew loses the worm's phase, but all harmonics of
 * a family are shifted by the same time. The fit is generalised least squares by Gauss-Newton
 * steps: data and derivatives pass through each run's whitening filter and are weighted by its
 * noise. The covariance of the parameters is that of the white steps' scores with whatever
 * autocorrelation the filter left (prewhitened kernel estimate).
 *
 * @see "Andrews &amp; Monahan (1992), Econometrica 60, 953, for the prewhitened covariance"
 */
final class SharedFit {
  private static final int MOST_STEPS = 30;
  private static final int MOST_HALVINGS = 6;

  /**
   * A step that promises to lower the sum of squares by less than this share is the last: what it
   * leaves is of the square of that.
   */
  private static final double LAST_STEP = 1e-8;

  /** A step leads a rate no farther than so many of its standard errors. */
  private static final double FARTHEST = 3;

  private final ToneModel model;
  private final double[] parameters;
  private final Covariance covariance;

  private SharedFit(ToneModel model, double[] parameters, Covariance covariance) {
    this.model = model;
    this.parameters = parameters;
    this.covariance = covariance;
  }

  /** Fits; nothing when the columns cannot be told apart or there are too few frames for them. */
  static Optional<SharedFit> of(List<RunBackground> backgrounds, List<Family> families) {
    ToneModel model = new ToneModel(backgrounds, families);
    return of(model, ToneStart.of(model));
  }

  private static Optional<SharedFit> of(ToneModel model, double[] start) {
    double[] parameters = refine(model, start);
    double[] residuals = model.residuals(parameters);
    return LeastSquares.on(model.derivatives(parameters))
        .map(design -> new SharedFit(model, parameters, covariance(design, model, residuals)));
  }

  /**
   * The same beside noise with a memory, whose error belongs to drift and sinusoids too: to first
   * order the fit is moved to the memory that each run is known to have, and what may be missing of
   * that is added to the covariance.
   *
   * @param runs the fit's own runs, in the same order
   */
  Optional<SharedFit> remembering(List<RunBackground.Remembering> runs) {
    List<RunBackground> taken = runs.stream().map(RunBackground.Remembering::taken).toList();
    Optional<SharedFit> fit =
        taken.equals(model.backgrounds())
            ? Optional.of(this)
            : of(new ToneModel(taken, families()), parameters);
    return runs.stream().anyMatch(RunBackground.Remembering::matters)
        ? fit.map(known -> known.moved(runs))
        : fit;
  }

  private SharedFit moved(List<RunBackground.Remembering> runs) {
    ToneModel longer =
        new ToneModel(
            runs.stream().map(RunBackground.Remembering::longer).toList(), layout().families());
    double[] hereLeft = model.residuals(parameters);
    double[][] here = model.derivatives(parameters);
    double[] thereLeft = longer.residuals(parameters);
    double[][] there = longer.derivatives(parameters);
    double[] moved = parameters.clone();
    Covariance wider = covariance;
    int from = 0;
    for (RunBackground.Remembering run : runs) {
      int to = from + run.taken().whitening().size();
      if (run.matters()) {
        double[] scores = new double[moved.length];
        for (int j = 0; j < scores.length; j++) {
          scores[j] = product(there[j], thereLeft, from, to) - product(here[j], hereLeft, from, to);
        }
        // The steps are white and of unit variance: their covariance is the inverse of X'X too.
        double[] change = covariance.times(scores);
        moved = moved(moved, run.off(), change);
        wider = wider.plus(Arrays.stream(change).map(c -> run.deviation() * c).toArray());
      }
      from = to;
    }
    return linearAt(moved) ? new SharedFit(model, moved, wider) : this;
  }

  /**
   * Whether the model is as good as linear so far: on a star that never moved as the pulses say, a
   * step may lead to no period at all.
   */
  private boolean linearAt(double[] moved) {
    return IntStream.range(0, families().size())
        .map(layout()::rate)
        .allMatch(
            rate ->
                Math.abs(moved[rate] - parameters[rate])
                    <= FARTHEST * covariance.standardError(rate));
  }

  private static double product(double[] one, double[] other, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += one[i] * other[i];
    }
    return sum;
  }

  /** Drift and bend of one run beside families whose periods are known. */
  static Optional<SteadyPart> steadyAtPeriods(RunBackground background, List<Family> families) {
    ToneModel model = new ToneModel(List.of(background), families);
    double[] parameters = ToneStart.of(model);
    List<double[]> columns = new ArrayList<>(Arrays.asList(model.derivatives(parameters)));
    int rates = model.layout().rate(0);
    columns.subList(rates, rates + families.size()).clear();
    double[] residuals = model.residuals(parameters);
    // Both stand before the rates that were left out.
    int drift = model.layout().drift(0);
    int bend = model.layout().bend(0);
    return LeastSquares.on(columns.toArray(double[][]::new))
        .map(
            design -> {
              LinearFit fit = design.fit(residuals);
              double[] change = fit.coefficients();
              double error = covariance(design, model, fit.residuals()).standardError(drift);
              return new SteadyPart(
                  Estimate.symmetric(parameters[drift] + change[drift], Estimate.SIGMAS_95 * error),
                  parameters[bend] + change[bend]);
            });
  }

  private static Covariance covariance(LeastSquares design, ToneModel model, double[] residuals) {
    double[] ofFrames = Arrays.copyOf(residuals, model.frameRows());
    return NeweyWest.covarianceWithPriors(design, ofFrames, NeweyWest.plugInLag(ofFrames));
  }

  /** The families at the periods that fit best, without a covariance. */
  static List<Family> refined(List<RunBackground> backgrounds, List<Family> families) {
    ToneModel model = new ToneModel(backgrounds, families);
    return model.families(refine(model, ToneStart.of(model)));
  }

  ToneModel model() {
    return model;
  }

  ToneLayout layout() {
    return model.layout();
  }

  double parameter(int index) {
    return parameters[index];
  }

  double[] parameters() {
    return parameters.clone();
  }

  /** Covariance of the parameters. */
  Covariance covariance() {
    return covariance;
  }

  /** The families at their fitted periods. */
  List<Family> families() {
    return model.families(parameters);
  }

  private static double[] refine(ToneModel model, double[] start) {
    double[] parameters = start;
    double[] residuals = model.residuals(parameters);
    double sum = LeastSquares.dot(residuals, residuals);
    for (int step = 0; step < MOST_STEPS; step++) {
      WhiteRegression linear = WhiteRegression.of(residuals, model.derivatives(parameters));
      double[] change = linear.coefficients();
      if (sum - linear.sumOfSquares() <= LAST_STEP * sum) {
        return moved(parameters, 1, change);
      }
      double[] next = null;
      double nextSum = sum;
      double share = 1;
      for (int halving = 0; halving <= MOST_HALVINGS; halving++, share /= 2) {
        double[] trial = moved(parameters, share, change);
        double[] trialResiduals = model.residuals(trial);
        double trialSum = LeastSquares.dot(trialResiduals, trialResiduals);
        if (trialSum <= nextSum) {
          next = trial;
          nextSum = trialSum;
          residuals = trialResiduals;
          break;
        }
      }
      if (next == null) {
        return parameters;
      }
      parameters = next;
      sum = nextSum;
    }
    return parameters;
  }

  private static double[] moved(double[] parameters, double share, double[] change) {
    double[] moved = parameters.clone();
    for (int j = 0; j < moved.length; j++) {
      moved[j] += share * change[j];
    }
    return moved;
  }
}
