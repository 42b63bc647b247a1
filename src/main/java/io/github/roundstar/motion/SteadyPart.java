package io.github.roundstar.motion;

import io.github.roundstar.model.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Drift and bend of a run with slow swings, told apart from the swing.
 *
 * <p>Beside the cosines of {@link SlowSwing} they would be the slope and the parabola that the
 * swing happens to have. Here the swing is a worm's turn with its second harmonic, of a period that
 * nobody knows: any from that of the fastest common worm to that of the slowest, each weighed by
 * its likelihood. What else the swing may be counts as wander. Where the run tells the period, it
 * tells the slope as well; where it does not, the periods disagree, and the interval holds what
 * they say.
 *
 * @param driftPerSecond slope [arcsec/s]
 * @param bendArcsec height of the parabola of {@link ToneColumns#bend(AxisRun)}
 * @see "Hoeting, Madigan, Raftery &amp; Volinsky (1999), Stat. Sci. 14, 382, for mean and variance
 *     over several models (from memory)"
 */
record SteadyPart(Estimate driftPerSecond, double bendArcsec) {
  /** Steps from the fastest period to the slowest: of 3.5 % each. */
  private static final int PERIODS = 36;

  /** Beside a worm of one period. */
  private record Turn(double logLikelihood, SteadyPart part) {}

  /** The part of a run beside these sinusoids; nothing when it is too short. */
  static Optional<SteadyPart> of(AxisRun run, List<Family> families) {
    AxisRun plain = run.swinging(0);
    List<Turn> turns = new ArrayList<>();
    Optional<RunBackground> last = Optional.empty();
    for (int i = 0; i <= PERIODS; i++) {
      List<Family> all = new ArrayList<>(families);
      all.add(Family.ofPeriod(period(i), 1, Family.UNLABELLED).withHarmonic(2));
      Optional<RunBackground> here =
          last.isPresent() ? last.get().with(all) : RunBackground.of(plain, all);
      here.ifPresent(
          background ->
              SharedFit.steadyAtPeriods(background, all)
                  .ifPresent(part -> turns.add(new Turn(background.logLikelihood(), part))));
      last = here;
    }
    return turns.isEmpty() ? Optional.empty() : Optional.of(mean(turns));
  }

  private static double period(int step) {
    return SlowSwing.FASTEST_WORM_SECONDS
        * Math.pow(
            SlowSwing.SLOWEST_WORM_SECONDS / SlowSwing.FASTEST_WORM_SECONDS,
            (double) step / PERIODS);
  }

  private static SteadyPart mean(List<Turn> turns) {
    double highest = turns.stream().mapToDouble(Turn::logLikelihood).max().orElseThrow();
    double weights = 0;
    double drift = 0;
    double square = 0;
    double bend = 0;
    for (Turn turn : turns) {
      double weight = Math.exp(turn.logLikelihood() - highest);
      Estimate own = turn.part().driftPerSecond();
      double error = (own.hi95() - own.value()) / Estimate.SIGMAS_95;
      weights += weight;
      drift += weight * own.value();
      square += weight * (own.value() * own.value() + error * error);
      bend += weight * turn.part().bendArcsec();
    }
    drift /= weights;
    double variance = Math.max(0, square / weights - drift * drift);
    return new SteadyPart(
        Estimate.symmetric(drift, Estimate.SIGMAS_95 * Math.sqrt(variance)), bend / weights);
  }
}
