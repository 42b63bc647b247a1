package io.github.roundstar.motion;

import io.github.roundstar.signal.WanderNoise;
import io.github.roundstar.signal.WanderPath;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Splits one run's motion by cause, for {@link MotionSplit}. */
final class MotionSplitter {
  /** A gear's rate is known to this share of a turn over the whole run; common practice. */
  private static final double RATE_UNSURE = 0.03;

  /** Sinusoids this close to a whole order, in orders, are on it. */
  private static final double LEAST_OFF_ORDER = 0.02;

  /** Farther off they are another gear's, however short the run: chance is three in ten here. */
  private static final double MOST_OFF_ORDER = 0.15;

  /** In a jump the level may go this many standard deviations of the noise from frame to frame. */
  private static final double LOOSE = 20;

  final GuidedFrames frames;
  final PulseStrength strength;
  final Map<String, double[]> causes = new LinkedHashMap<>();
  final double[] levelVariance;
  final double[] trainableArcsec;
  final double[] executedArcsec;
  LostMotion lost;

  private final AxisMotion of;
  private final SharedFit fit;
  private final int index;
  private final AxisRun run;
  private final double declared;
  private final double[] left;

  /**
   * Begins.
   *
   * @param of motion of the run, jolts and all
   * @param fit drift and sinusoids of the run without its jolts, beside other runs or none
   * @param index which of the fit's runs this is
   * @param declared what a second of pulse moves as declared, on the sky [arcsec/s]
   */
  MotionSplitter(GuidedFrames frames, AxisMotion of, SharedFit fit, int index, double declared) {
    this.frames = frames;
    this.of = of;
    this.fit = fit;
    this.index = index;
    this.run = of.run();
    this.declared = declared;
    this.strength = PulseStrength.of(declared, of);
    this.levelVariance = new double[frames.size()];
    this.trainableArcsec = new double[frames.size()];
    this.left = scaled(run.motion().arcsec());
    this.executedArcsec = executed();
  }

  /**
   * Splits.
   *
   * @param sent motion with the pulses taken out as sent and as declared
   * @param trained the family that one gear's curve can take out
   * @param jolts where the run was knocked or blown about
   */
  MotionSplit split(MotionSeries sent, OptionalInt trained, List<FrameSpan> jolts) {
    take(
        MotionSplit.DRIFT,
        scaled(fit.model().driftAndBend(fit.parameters(), index, run.phaseSeconds())));
    takeTones(trained);
    take(MotionSplit.WANDER, new double[left.length]);
    takeLevel(jolts);
    lost = of.effect().lost().times(of.effect().strength()).anew();
    if (lost.arcsec() > 0) {
      double[] kept = sent(sent);
      for (int i = 0; i < kept.length; i++) {
        kept[i] -= executedArcsec[i];
      }
      causes.put(MotionSplit.BACKLASH, kept);
    }
    return new MotionSplit(this);
  }

  /** What the corrections moved, behind what is lost. */
  private double[] executed() {
    double[] moved = run.motion().pushedOneWayArcsec();
    double[] otherWay = run.motion().pushedOtherWayArcsec();
    for (int i = 0; i < moved.length; i++) {
      moved[i] -= otherWay[i];
    }
    return scaled(moved);
  }

  /** What they would have moved with nothing lost. */
  private double[] sent(MotionSeries asDeclared) {
    double[] moved = asDeclared.pushedOneWayArcsec();
    double[] otherWay = asDeclared.pushedOtherWayArcsec();
    for (int i = 0; i < moved.length; i++) {
      moved[i] =
          declared == 0
              ? 0
              : (strength.oneWay() * moved[i] - strength.otherWay() * otherWay[i]) / declared;
    }
    return moved;
  }

  private void takeTones(OptionalInt trained) {
    List<Family> families = fit.families();
    double[] seconds = run.phaseSeconds();
    for (int f = 0; f < families.size(); f++) {
      List<Integer> harmonics = families.get(f).harmonics();
      for (int h = 0; h < harmonics.size(); h++) {
        double[] tone = scaled(fit.model().tone(fit.parameters(), f, h, index, seconds));
        take(MotionSplit.PERIODIC + families.get(f).label(harmonics.get(h)), tone);
        if (trained.isPresent()
            && (trained.getAsInt() == f
                || comesBack(
                    families.get(trained.getAsInt()), families.get(f).hertz(harmonics.get(h))))) {
          add(tone, trainableArcsec);
        }
      }
    }
  }

  /**
   * Whether a sinusoid is in the same place after each turn of the gear that can be trained: a
   * quick harmonic of it that was found for itself.
   */
  private boolean comesBack(Family gear, double hertz) {
    double[] seconds = run.phaseSeconds();
    double turns =
        seconds.length == 0 ? 0 : (seconds[seconds.length - 1] - seconds[0]) / gear.periodSeconds();
    double order = hertz * gear.periodSeconds();
    double nearest = Math.rint(order);
    double unsure = RATE_UNSURE * nearest / Math.max(1, turns);
    return nearest >= 1
        && Math.abs(order - nearest) <= Math.min(MOST_OFF_ORDER, LEAST_OFF_ORDER + unsure);
  }

  /**
   * The smoothed level of what is left, step by step: a step inside a jolt is the jolt's, one at a
   * lost level is nobody's, all others are wander.
   */
  private void takeLevel(List<FrameSpan> jolts) {
    double[] seconds = run.motion().seconds();
    boolean[] starts = run.motion().startsPiece();
    double[] data = axis(left);
    WanderNoise wanderNoise = of.jolts().wanderNoise();
    boolean[] jolted = inside(jolts);
    double[] loose = new double[frames.size()];
    for (int i = 0; i < loose.length; i++) {
      loose[i] = jolted[i] ? LOOSE * LOOSE : 0;
    }
    putLevel(WanderPath.of(seconds, starts, data, wanderNoise, loose), starts, jolted);
  }

  private boolean[] inside(List<FrameSpan> spans) {
    boolean[] inside = new boolean[frames.size()];
    for (FrameSpan span : spans) {
      int at = Arrays.binarySearch(frames.frame, span.from());
      for (int i = at < 0 ? -at - 1 : at; i < inside.length && frames.frame[i] < span.to(); i++) {
        inside[i] = true;
      }
    }
    return inside;
  }

  private void putLevel(WanderPath level, boolean[] starts, boolean[] jolted) {
    int n = frames.size();
    double cosine = run.cosine();
    double[] wander = new double[n];
    double[] jolt = new double[n];
    double[] noise = new double[n];
    boolean any = false;
    for (int i = 0; i < n; i++) {
      any |= jolted[i];
      noise[i] = left[i] - cosine * level.level(i);
      levelVariance[i] = cosine * cosine * level.variance(i);
      if (i > 0) {
        double step = starts[i] ? 0 : cosine * (level.level(i) - level.level(i - 1));
        wander[i] = wander[i - 1] + (jolted[i] ? 0 : step);
        jolt[i] = jolt[i - 1] + (jolted[i] ? step : 0);
      }
    }
    add(wander, causes.get(MotionSplit.WANDER));
    causes.put(MotionSplit.NOISE, noise);
    if (any) {
      causes.put(MotionSplit.JOLTS, jolt);
    }
  }

  private void take(String cause, double[] series) {
    for (int i = 0; i < left.length; i++) {
      left[i] -= series[i];
    }
    add(series, causes.computeIfAbsent(cause, name -> new double[left.length]));
  }

  private static void add(double[] series, double[] sum) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += series[i];
    }
  }

  /** From the fit's scale to the sky. */
  private double[] scaled(double[] values) {
    double[] sky = values.clone();
    for (int i = 0; i < sky.length; i++) {
      sky[i] *= run.cosine();
    }
    return sky;
  }

  private double[] axis(double[] sky) {
    double[] axis = sky.clone();
    for (int i = 0; i < axis.length; i++) {
      axis[i] /= run.cosine();
    }
    return axis;
  }
}
