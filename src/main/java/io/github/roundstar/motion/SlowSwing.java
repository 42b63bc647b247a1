package io.github.roundstar.motion;

import java.util.List;
import java.util.Optional;

/**
 * Slow swings of a run that is too short to tell the worm: a smooth path beside drift and bend. Of
 * fewer than three turns no sinusoid can be made, and what swings by arcseconds would pass for
 * random wander, which steps as much from frame to frame as it must to swing so far in minutes;
 * noise would come out too small and pulses, which follow the swing, would seem to answer it.
 *
 * <p>The path is a sum of cosines whose half periods go into the run. Beside drift and bend they
 * come near any smooth path with the inverse fourth power of their number: integrate its cosine
 * coefficients by parts, slopes at the ends taken out by the two. Each is freed of the drift and
 * the bend that it has itself, so that those keep their meaning: slope and parabola that fit the
 * whole path best.
 */
final class SlowSwing {
  /**
   * One turn of the slowest common worm: 135 teeth, 638 s. Slower ones are rare, and three of their
   * turns take longer than most runs.
   */
  static final double SLOWEST_WORM_SECONDS = 640;

  /** One turn of the fastest common worm: 480 teeth. */
  static final double FASTEST_WORM_SECONDS = 180;

  /** From this length on a run tells the worm by sinusoids. */
  static final double LONG_ENOUGH_SECONDS = PeriodicError.FEWEST_CYCLES * SLOWEST_WORM_SECONDS;

  private static final double SHORTEST_HALF_PERIOD_SECONDS = FASTEST_WORM_SECONDS / 2;

  private SlowSwing() {}

  /**
   * The run with the swings that it needs: none where it is long, or where wander, noise and these
   * sinusoids tell it as well. Random wander goes on swings of this kind too, so that a test of
   * many columns against none finds them in a quarter of all runs; they have to be worth their
   * number by Schwarz's criterion.
   *
   * @see "Schwarz (1978), Ann. Stat. 6, 461"
   */
  static AxisRun beside(AxisRun run, List<Family> families) {
    int columns = (int) (run.motion().spanSeconds() / SHORTEST_HALF_PERIOD_SECONDS);
    if (run.motion().spanSeconds() >= LONG_ENOUGH_SECONDS || columns == 0) {
      return run;
    }
    AxisRun swinging = run.swinging(columns);
    Optional<RunBackground> without = RunBackground.of(run, families);
    Optional<RunBackground> with = RunBackground.of(swinging, families);
    if (without.isEmpty() || with.isEmpty()) {
      return run;
    }
    double gained = 2 * (with.get().logLikelihood() - without.get().logLikelihood());
    return gained > columns * Math.log(with.get().fit().steps()) ? swinging : run;
  }

  /** Runs to be fitted together: where they are long enough together, sinusoids tell all swings. */
  static List<AxisRun> together(List<AxisRun> runs) {
    double seconds = runs.stream().mapToDouble(run -> run.motion().spanSeconds()).sum();
    return seconds < LONG_ENOUGH_SECONDS
        ? runs
        : runs.stream().map(run -> run.swings() == 0 ? run : run.swinging(0)).toList();
  }

  /**
   * Response of a run. So few pulses as a run with slow swings has may seem to push half as much
   * again as they do, with more wander and less noise; where they do not tell their strength, noise
   * and wander are those of pulses that push as declared, which the motion is then taken from too.
   */
  static Optional<Response> response(AxisRun run, List<Family> families) {
    return Response.of(run, families)
        .map(
            found ->
                run.swings() == 0 || found.informative()
                    ? found
                    : asDeclared(found, run, families));
  }

  private static Response asDeclared(Response found, AxisRun run, List<Family> families) {
    AxisRun quiet = run.without(found.quiet());
    MotionSeries motion = quiet.motion();
    return RunBackground.of(quiet, families)
        .map(RunBackground::wanderNoise)
        .map(
            model ->
                new Response(
                    found.oneWay(),
                    found.otherWay(),
                    found.both(),
                    found.arrived(),
                    motion.measured(model, ToneColumns.withDrift(quiet, families)).noise(),
                    found.quiet().with(model)))
        .orElse(found);
  }

  /** The columns at these times since the run's origin [s]; none in a long run. */
  static double[][] columns(AxisRun run, double[] phaseSeconds) {
    double[][] columns = new double[run.swings()][phaseSeconds.length];
    if (columns.length == 0) {
      return columns;
    }
    double first = run.motion().seconds(0) - run.originSeconds();
    double span = run.motion().spanSeconds();
    for (int k = 1; k <= columns.length; k++) {
      double square = Math.pow(Math.PI * k, 2);
      for (int i = 0; i < phaseSeconds.length; i++) {
        double share = (phaseSeconds[i] - first) / span;
        double x = 2 * share - 1;
        columns[k - 1][i] =
            Math.cos(Math.PI * k * share) + (k % 2 == 1 ? 12 * x : -90 * x * x) / square;
      }
    }
    return columns;
  }

  /**
   * The sum of the columns.
   *
   * @param parameters how much of each, among others
   * @param first where those of the columns begin
   */
  static double[] path(AxisRun run, double[] parameters, int first, double[] phaseSeconds) {
    double[] path = new double[phaseSeconds.length];
    double[][] columns = columns(run, phaseSeconds);
    for (int k = 0; k < columns.length; k++) {
      for (int i = 0; i < path.length; i++) {
        path[i] += parameters[first + k] * columns[k][i];
      }
    }
    return path;
  }

  /** Above this frequency nothing passes for a slow swing of these runs; 0 without any [Hz]. */
  static double fastestHertz(List<AxisRun> runs) {
    return runs.stream()
        .filter(run -> run.swings() > 0)
        .mapToDouble(run -> (run.swings() + 1) / (2 * run.motion().spanSeconds()))
        .max()
        .orElse(0);
  }
}
