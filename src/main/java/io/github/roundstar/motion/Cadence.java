package io.github.roundstar.motion;

import io.github.roundstar.model.Frames;
import io.github.roundstar.signal.Quantile;
import java.util.OptionalDouble;

/** Time from frame to frame. */
public final class Cadence {
  private Cadence() {}

  /** Median time between frames [s]; nothing for fewer than two frames. */
  public static OptionalDouble medianSeconds(Frames frames) {
    if (frames.size() < 2) {
      return OptionalDouble.empty();
    }
    double[] steps = new double[frames.size() - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = frames.timeSeconds(i + 1) - frames.timeSeconds(i);
    }
    return OptionalDouble.of(Quantile.median(steps));
  }
}
