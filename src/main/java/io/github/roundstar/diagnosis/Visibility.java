package io.github.roundstar.diagnosis;

import io.github.roundstar.motion.AmplitudeTrace;
import io.github.roundstar.motion.Answer;
import io.github.roundstar.motion.Gears;
import io.github.roundstar.motion.PeriodicError;
import io.github.roundstar.results.Detectable;

/** How large a sinusoid must be to stand out of a night's wander and noise. */
final class Visibility {
  private Visibility() {}

  /** At the worm's period; where it is unknown, at the period that needs most. */
  static Answer<Detectable> of(PeriodicError found, Gears gears) {
    if (found.cycles().isPresent() && found.cycles().getAsDouble() < PeriodicError.FEWEST_CYCLES) {
      return Answer.none("the runs hold too few turns of the worm");
    }
    AmplitudeTrace trace = found.amplitudes();
    int slowest = (int) PeriodicError.FEWEST_CYCLES;
    if (trace.size() <= slowest) {
      return Answer.none("the runs are too short to hold any period three times");
    }
    if (gears.wormPeriodSeconds().isPresent()) {
      double worm = gears.wormPeriodSeconds().getAsDouble();
      return Answer.of(new Detectable(worm, trace.onePercentArcsec(nearest(trace, worm))));
    }
    int bin = hardest(trace, slowest);
    return Answer.of(new Detectable(trace.periodSeconds(bin), trace.onePercentArcsec(bin)));
  }

  /** Bin k holds k turns in the longest run. */
  private static int nearest(AmplitudeTrace trace, double periodSeconds) {
    long turns = Math.round(trace.periodSeconds(1) / periodSeconds);
    return (int) Math.max(1, Math.min(trace.size() - 1, turns));
  }

  private static int hardest(AmplitudeTrace trace, int from) {
    int hardest = from;
    for (int k = from + 1; k < trace.size(); k++) {
      hardest = trace.onePercentArcsec(k) > trace.onePercentArcsec(hardest) ? k : hardest;
    }
    return hardest;
  }
}
