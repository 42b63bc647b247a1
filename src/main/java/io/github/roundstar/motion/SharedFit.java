package io.github.roundstar.motion;

import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.WhiteRegression;
import java.util.List;
import java.util.Optional;

/**
 * Drift of every run and sinusoids common to all runs, fitted together to the original times.
 *
 * <p>Every family of sinusoids has one period and one set of amplitudes for the whole night; in
 * each run it may start at another place, since a slew loses the worm's phase, but all harmonics of
 * a family are shifted by the same time. The fit is generalised least squares by Gauss-Newton
 * steps: data and derivatives pass through each run's whitening filter and are weighted by its
 * noise. The covariance of the parameters is that of the white steps' scores with whatever
 * autocorrelation the filter left (prewhitened kernel estimate), and what other effects of the
 * pulses would change.
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

  private static Covariance covariance(LeastSquares design, ToneModel model, double[] residuals) {
    Covariance covariance =
        NeweyWest.covarianceCorrected(design, residuals, NeweyWest.plugInLag(residuals));
    return RunBackground.withOthers(model.backgrounds(), covariance, design);
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
