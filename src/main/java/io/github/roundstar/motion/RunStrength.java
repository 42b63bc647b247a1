package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.LinearFit;
import io.github.roundstar.signal.NeweyWest;
import io.github.roundstar.signal.Whitening;
import java.util.ArrayList;
import java.util.List;

/**
 * How strongly pulses pushed in one run, over what they did in the night as a whole. The posterior
 * has one strength for all runs; here the motion that it makes out of a run is fitted once more
 * with what the pulses pushed as one more regressor. A filter that looks only back makes the motion
 * white, so that pulses that answer the noise of a frame do not spoil the fit.
 */
public final class RunStrength {
  private RunStrength() {}

  /**
   * Strength in this run over that of the night.
   *
   * @return nothing when no pulse was sent or the run is too short
   */
  public static Answer<Estimate> overNight(AxisMotion axis) {
    MotionSeries motion = axis.quiet().motion();
    double[] net = motion.pushedOneWayArcsec();
    double[] other = motion.pushedOtherWayArcsec();
    boolean pushes = false;
    for (int i = 0; i < net.length; i++) {
      net[i] -= other[i];
      pushes |= net[i] != net[0];
    }
    List<double[]> columns =
        new ArrayList<>(List.of(ToneColumns.withDrift(axis.quiet(), axis.known().families())));
    columns.add(net);
    Whitening whitening = motion.whitening(axis.jolts().wanderNoise());
    if (!pushes) {
      return Answer.none("no pulse was sent in the run");
    }
    if (whitening.size() < RunBackground.FEWEST_STEPS + columns.size()) {
      return Answer.none("the run is too short to tell its pulses from those of the night");
    }
    return LeastSquares.on(whitening.apply(columns.toArray(double[][]::new)))
        .map(design -> Answer.of(over(design, motion.white(whitening), columns.size() - 1)))
        .orElseGet(() -> Answer.none("the run's pulses cannot be told from its drift"));
  }

  /** Motion that still goes the pulses' way was pushed by less than what was taken out. */
  private static Estimate over(LeastSquares design, double[] white, int column) {
    LinearFit fit = design.fit(white);
    double[] residuals = fit.residuals();
    Covariance covariance =
        NeweyWest.covarianceCorrected(design, residuals, NeweyWest.plugInLag(residuals));
    return Estimate.symmetric(
        1 - fit.coefficient(column), Estimate.SIGMAS_95 * covariance.standardError(column));
  }
}
