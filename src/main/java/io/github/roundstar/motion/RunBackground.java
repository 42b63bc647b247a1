package io.github.roundstar.motion;

import io.github.roundstar.signal.MemoryWeight;
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
 * @param fit drift, sinusoids, each of them free, and slow swings; its residuals are white when
 *     nothing else is there
 */
record RunBackground(
    AxisRun run, WanderNoise wanderNoise, Whitening whitening, WhiteRegression fit) {
  /** Fewest white steps, beyond one for each column, that a fit is tried on. */
  static final int FEWEST_STEPS = 16;

  /** Fits; nothing when the run is too short or constant. */
  static Optional<RunBackground> of(AxisRun run, List<Family> families) {
    return fit(run, families, columns -> run.motion().wanderNoise(columns));
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
   * A run beside noise with a memory.
   *
   * @param taken the run beside noise with the memory that it clearly has, else beside white noise
   * @param longer the same beside noise with a longer memory; the same again where the memory is
   *     not known
   * @param off how much longer the memory is than the one taken, as a share of the way to the
   *     longer one
   * @param deviation standard deviation of that share
   */
  record Remembering(RunBackground taken, RunBackground longer, double off, double deviation) {
    /** Whether what is not known of the memory matters. */
    boolean matters() {
      return longer != taken && deviation > 0;
    }
  }

  /**
   * The same run beside noise with a memory, where pulses may push as they like. To white noise
   * pulses seem too weak where seeing lasts, and drift and sinusoids with them.
   */
  Remembering remembering(List<Family> families) {
    // So few frames tell no memory, and their pulses too little to be left free.
    if (run.motion().spanSeconds() < SlowSwing.LONG_ENOUGH_SECONDS) {
      return new Remembering(this, this, 0, 0);
    }
    WanderNoise.Remembering found =
        run.motion().remembering(wanderNoise, ResponseModel.of(run, families).columns());
    MemoryWeight weighed = found.weighed();
    RunBackground longer = beside(found.longer());
    if (found.clear()) {
      return new Remembering(
          beside(found.model()),
          longer,
          weighed.mean() - found.standardErrors(),
          weighed.deviation());
    }
    double apart = 1 + Math.max(0, found.standardErrors());
    return new Remembering(this, longer, weighed.mean() / apart, weighed.deviation() / apart);
  }

  private RunBackground beside(WanderNoise other) {
    return new RunBackground(run, other, run.motion().whitening(other), fit);
  }

  /**
   * The same run; wander and noise are those about a path that is known, pulses free to push as
   * they like. A path with more than a bend would count as wander else, and pulses would seem to
   * answer it.
   *
   * @param pathArcsec at the run's samples
   */
  RunBackground about(double[] pathArcsec) {
    double[] seconds = run.motion().seconds();
    boolean[] starts = run.motion().startsPiece();
    double[] left = run.motion().arcsec();
    for (int i = 0; i < left.length; i++) {
      left[i] -= pathArcsec[i];
    }
    return wanderNoise
        .refit(seconds, starts, left, ResponseModel.of(run, List.of()).columns())
        .map(found -> new RunBackground(run, found, found.whitening(seconds, starts), fit))
        .orElse(this);
  }

  /** Logarithm of the likelihood of the run, but for a constant that only its frames decide. */
  double logLikelihood() {
    return whitening.logLikelihood(fit.sumOfSquares());
  }

  /** Times of the white steps since the run's origin [s]. */
  double[] stepSeconds() {
    return Arrays.stream(whitening.stepSamples())
        .mapToDouble(i -> run.motion().seconds(i) - run.originSeconds())
        .toArray();
  }
}
