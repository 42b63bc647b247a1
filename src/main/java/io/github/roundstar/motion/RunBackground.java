package io.github.roundstar.motion;

import io.github.roundstar.signal.Covariance;
import io.github.roundstar.signal.LeastSquares;
import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WhiteRegression;
import io.github.roundstar.signal.Whitening;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Wander and noise of one run beside its drift and the sinusoids found so far, and what they leave,
 * made white.
 *
 * @param run the run
 * @param wanderNoise wander and noise
 * @param whitening the filter that makes them white
 * @param fit drift and sinusoids, each of them free; its residuals are white when nothing else is
 *     there
 */
record RunBackground(
    AxisRun run, WanderNoise wanderNoise, Whitening whitening, WhiteRegression fit) {
  /** Fewest white steps, beyond one for each column, that a fit is tried on. */
  static final int FEWEST_STEPS = 16;

  /** Fits; nothing when the run is too short or constant. */
  static Optional<RunBackground> of(AxisRun run, List<Family> families) {
    return fit(run, families, columns -> run.motion().wanderNoise(columns));
  }

  /** The run beside wander and noise that are known. */
  static Optional<RunBackground> of(AxisRun run, List<Family> families, WanderNoise known) {
    return fit(run, families, columns -> Optional.of(known));
  }

  /** The same run beside other families; wander and noise are looked for near those known. */
  Optional<RunBackground> with(List<Family> families) {
    return fit(run, families, columns -> run.motion().wanderNoise(columns, wanderNoise));
  }

  private static Optional<RunBackground> fit(
      AxisRun run, List<Family> families, Function<double[][], Optional<WanderNoise>> search) {
    MotionSeries motion = run.motion();
    double[][] columns = ToneColumns.withDrift(run, families);
    if (motion.size() - motion.pieces() < FEWEST_STEPS + columns.length) {
      return Optional.empty();
    }
    return search
        .apply(columns)
        .map(
            wanderNoise -> {
              Whitening whitening = motion.whitening(wanderNoise);
              WhiteRegression fit =
                  WhiteRegression.of(motion.white(whitening), whitening.apply(columns));
              return new RunBackground(run, wanderNoise, whitening, fit);
            });
  }

  /**
   * The covariance of a fit with what other effects of the pulses would change.
   *
   * @param design its first rows are the white motion of these runs
   */
  static Covariance withOthers(
      List<RunBackground> backgrounds, Covariance covariance, LeastSquares design) {
    List<double[][]> others = backgrounds.stream().map(b -> b.run().otherwise()).toList();
    int count = others.stream().mapToInt(o -> o.length).max().orElse(0);
    Covariance sum = covariance;
    for (int k = 0; k < count; k++) {
      double[] change = new double[design.size()];
      int next = 0;
      for (int r = 0; r < backgrounds.size(); r++) {
        RunBackground background = backgrounds.get(r);
        next =
            k < others.get(r).length
                ? ToneModel.append(background, others.get(r)[k], change, next)
                : next + background.whitening().size();
      }
      sum = sum.plus(design.fit(change).coefficients());
    }
    return sum;
  }

  /** Times of the white steps since the run's origin [s]. */
  double[] stepSeconds() {
    return Arrays.stream(whitening.stepSamples())
        .mapToDouble(i -> run.motion().seconds(i) - run.originSeconds())
        .toArray();
  }
}
