package io.github.roundstar.motion;

import java.util.Optional;

/**
 * A loop with its deadband and limits averaged out: every offset is answered in proportion, with
 * the gain that describes the pulses best. What a disturbance leaves in the offsets is then linear
 * in the disturbance, so that causes can be told apart.
 *
 * <p>For offsets that are about normally distributed what this gain leaves of the pulses has
 * nothing to do with the offsets, whatever the shape of deadband and limits.
 *
 * @see "Bussgang (1952), MIT Research Laboratory of Electronics report 216; Booton (1954), IRE
 *     Trans. Circuit Theory 1, 9, for nonlinear control systems with random inputs"
 */
final class LinearLoop {
  private final Controller unit;
  private final boolean[] listening;
  private final double gain;

  private LinearLoop(Controller unit, boolean[] listening, double gain) {
    this.unit = unit;
    this.listening = listening;
    this.gain = gain;
  }

  /**
   * The loop of a run: gain by least squares of what pulses moved on what they answered, over the
   * used frames, with a constant for pulses that go one way more than the other.
   *
   * @param law where the memory and delay stand; without one there is neither
   */
  static LinearLoop of(MotionSplit split, Optional<Controller> law) {
    Controller unit =
        new Controller(
            1,
            0,
            law.map(Controller::memory).orElse(0.0),
            law.map(Controller::delayFrames).orElse(0),
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    GuidedFrames frames = split.frames;
    double[] answered = unit.answered(frames.offsetArcsec);
    int n = 0;
    double sum = 0;
    double moved = 0;
    double square = 0;
    double product = 0;
    for (int i = 0; i < answered.length; i++) {
      if (frames.used[i] && frames.listening[i] && !Double.isNaN(answered[i])) {
        double push = split.strength.moved(frames.pulseSeconds[i]);
        n++;
        sum += answered[i];
        moved += push;
        square += answered[i] * answered[i];
        product += answered[i] * push;
      }
    }
    double variance = n == 0 ? 0 : square - sum * sum / n;
    return new LinearLoop(
        unit, frames.listening, variance > 0 ? (product - sum * moved / n) / variance : 0);
  }

  /**
   * What the loop's own law keeps from this one's corrections: small offsets that it leaves alone,
   * large ones that it answers more strongly than on average, limits. It acts like a disturbance of
   * the loop [arcsec].
   */
  double[] withheld(Controller law, MotionSplit split) {
    double[] offsets = split.frames.offsetArcsec;
    Controller.Course course = unit.begin();
    double[] withheld = new double[offsets.length];
    double sum = 0;
    for (int i = 0; i < offsets.length; i++) {
      withheld[i] = sum;
      double answered = course.answered(offsets[i]);
      if (listening[i] && !Double.isNaN(answered)) {
        sum += gain * answered - split.strength.moved(law.answer(answered) / 1000);
      }
    }
    return withheld;
  }

  /** Share of the offset that a pulse takes away. */
  double gain() {
    return gain;
  }

  /** What a disturbance leaves in the offsets when the loop works on it alone. */
  double[] leaves(double[] disturbance) {
    Controller.Course course = unit.begin();
    double[] offsets = new double[disturbance.length];
    double corrected = 0;
    for (int i = 0; i < offsets.length; i++) {
      offsets[i] = disturbance[i] - corrected;
      corrected += push(course.answered(offsets[i]), i);
    }
    return offsets;
  }

  private double push(double answered, int i) {
    return listening[i] && !Double.isNaN(answered) ? gain * answered : 0;
  }
}
