package io.github.roundstar.motion;

import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * How much one turn of a gear resembles the next. Every complete turn of every run is fitted by
 * itself, with the harmonics that were found over the night; amplitudes that differ from turn to
 * turn by more than wander and noise make them are changes of the gear, which no training can take
 * away. Wander and noise are fitted anew beside these free turns, so that changes of the gear do
 * not pass for wander.
 */
final class TurnLikeness {
  /** Fewer turns tell nothing of what changes. */
  static final int FEWEST_TURNS = 4;

  /** A turn counts when its frames span this share of it. */
  private static final double COMPLETE = 0.9;

  /**
   * How far below and above the wander of the whole run that of free turns is looked for [decades].
   */
  private static final double BELOW = 3;

  private static final double ABOVE = 0.5;

  /** One turn of a run. */
  private record Turn(double[] seconds, boolean[] starts, double[] left, double[][] columns) {}

  private final List<Turn> turns = new ArrayList<>();
  private double ratioOfRuns;

  private TurnLikeness() {}

  /**
   * Mean squares of what comes back and of what does not.
   *
   * @param steady mean square of the curve that comes back every turn [arcsec&sup2; at the axis]
   * @param changing mean square of what differs from turn to turn, wander and noise left out
   */
  record Parts(double steady, double changing) {
    /** Share of the mean square that comes back, 0 to 1. */
    double repeatability() {
      return steady <= 0 ? 0 : steady / (steady + changing);
    }
  }

  /** Nothing with fewer than {@value #FEWEST_TURNS} complete turns. */
  static Optional<Parts> of(SharedFit fit, int family) {
    TurnLikeness likeness = new TurnLikeness();
    for (int r = 0; r < fit.model().backgrounds().size(); r++) {
      likeness.addRun(fit, family, r);
    }
    return likeness.turns.size() < FEWEST_TURNS ? Optional.empty() : likeness.parts();
  }

  private void addRun(SharedFit fit, int family, int r) {
    ToneModel model = fit.model();
    double[] parameters = fit.parameters();
    RunBackground background = model.backgrounds().get(r);
    double[] left = background.run().motion().arcsec();
    double[] fitted = model.values(parameters, r);
    double[] tones = model.tones(parameters, family, r);
    double[] angle = background.run().phaseSeconds();
    double rate = fit.parameter(fit.layout().rate(family));
    for (int i = 0; i < left.length; i++) {
      left[i] += tones[i] - fitted[i];
      angle[i] = rate * (angle[i] - model.shift(parameters, family, r));
    }
    int before = turns.size();
    double[][] columns = columns(background.run(), fit.families().get(family), angle);
    int begin = 0;
    while (begin < angle.length) {
      int end = begin;
      while (end < angle.length && turn(angle[end]) == turn(angle[begin])) {
        end++;
      }
      if (angle[end - 1] - angle[begin] >= COMPLETE * 2 * Math.PI) {
        turns.add(cut(background.run().motion(), left, columns, begin, end));
      }
      begin = end;
    }
    double ratio = background.wanderNoise().ratioPerSecond();
    ratioOfRuns = turns.size() > before ? Math.max(ratioOfRuns, ratio) : ratioOfRuns;
  }

  private static double turn(double angle) {
    return Math.floor(angle / (2 * Math.PI));
  }

  private static double[][] columns(AxisRun run, Family family, double[] angle) {
    double[][] columns = new double[2 * family.harmonics().size()][angle.length];
    for (int h = 0; h < family.harmonics().size(); h++) {
      int order = family.harmonics().get(h);
      double dimming = ToneColumns.averaging(order * family.angularRate(), run.exposureSeconds());
      for (int i = 0; i < angle.length; i++) {
        columns[2 * h][i] = dimming * Math.cos(order * angle[i]);
        columns[2 * h + 1][i] = dimming * Math.sin(order * angle[i]);
      }
    }
    return columns;
  }

  private static Turn cut(
      MotionSeries motion, double[] left, double[][] columns, int begin, int end) {
    double[][] ofTurn = new double[columns.length][];
    for (int j = 0; j < columns.length; j++) {
      ofTurn[j] = Arrays.copyOfRange(columns[j], begin, end);
    }
    return new Turn(
        Arrays.copyOfRange(motion.seconds(), begin, end),
        Arrays.copyOfRange(motion.startsPiece(), begin, end),
        Arrays.copyOfRange(left, begin, end),
        ofTurn);
  }

  /** Restricted log likelihood of all turns, each with amplitudes and a level of its own. */
  private double logLikelihood(double logRatio) {
    double squares = 0;
    double free = 0;
    double determinants = 0;
    for (Turn turn : turns) {
      Whitening whitening = Whitening.of(turn.seconds(), turn.starts(), Math.pow(10, logRatio));
      WhiteRegression fit =
          WhiteRegression.of(whitening.apply(turn.left()), whitening.apply(turn.columns()));
      squares += fit.sumOfSquares();
      free += fit.degreesOfFreedom();
      determinants += whitening.logDeterminant() + fit.logDeterminant();
    }
    return -0.5 * (free * Math.log(squares / free) + determinants);
  }

  private Optional<Parts> parts() {
    double start = Math.log10(ratioOfRuns);
    double ratio =
        Math.pow(
            10,
            new BrentOptimizer(1e-6, 1e-3)
                .optimize(
                    new MaxEval(60),
                    new UnivariateObjectiveFunction(this::logLikelihood),
                    GoalType.MAXIMIZE,
                    new SearchInterval(start - BELOW, start + ABOVE, start))
                .getPoint());
    List<LinearFit> fits = new ArrayList<>();
    for (Turn turn : turns) {
      Whitening whitening = Whitening.of(turn.seconds(), turn.starts(), ratio);
      LeastSquares.on(whitening.apply(turn.columns()))
          .ifPresent(design -> fits.add(design.fit(whitening.apply(turn.left()))));
    }
    return fits.size() < FEWEST_TURNS ? Optional.empty() : Optional.of(parts(fits));
  }

  private static Parts parts(List<LinearFit> fits) {
    int turns = fits.size();
    double[] mean = new double[fits.get(0).coefficients().length];
    double squares = 0;
    double free = 0;
    double residuals = 0;
    double perNoise = 0;
    for (LinearFit fit : fits) {
      residuals += fit.residualSquares();
      free += fit.degreesOfFreedom();
      Covariance covariance = fit.covariance();
      double ofTurn = fit.residualSquares() / fit.degreesOfFreedom();
      for (int j = 0; j < mean.length; j++) {
        mean[j] += fit.coefficient(j) / turns;
        squares += fit.coefficient(j) * fit.coefficient(j);
        perNoise += covariance.at(j, j) / ofTurn / turns;
      }
    }
    double ofMean = Arrays.stream(mean).map(m -> m * m).sum();
    double between = (squares - turns * ofMean) / (turns - 1);
    // A sinusoid's mean square is half of its squared amplitude.
    return new Parts(
        Math.max(0, ofMean - between / turns) / 2,
        Math.max(0, between - perNoise * residuals / free) / 2);
  }
}
