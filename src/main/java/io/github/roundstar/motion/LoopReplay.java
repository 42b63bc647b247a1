package io.github.roundstar.motion;

import java.util.List;
import java.util.Locale;

/**
 * One axis of a run guided again under other settings: the motion, the dithers and the noise that
 * the run really had go through the fitted law with another gain, deadband or cadence, or with the
 * periodic error trained out. Immutable.
 *
 * <p>The offsets that the log would show follow from motion plus noise, which is known well; the
 * star's motion is those offsets less the noise, of which only the mean and the variance are known,
 * given the log. Its mean square is taken with both, so it is not too small by what smoothing takes
 * for motion.
 */
public final class LoopReplay {
  /** Repeating the present settings must give the log's own RMS to within this share. */
  private static final double REPEATS = 0.15;

  /** Frames that tell what a stronger response changes: the loop forgets within some ten. */
  private static final int EXCERPT = 3000;

  private final MotionSplit split;
  private final Controller law;

  /** Pulses push so many times as strongly as was found. */
  private final double factor;

  private final int samples;
  private final double[] disturbance;
  private final double[] noise;

  /**
   * A setting.
   *
   * @param gain share of a lasting offset that one pulse takes away
   * @param deadbandArcsec offsets below this are left alone [arcsec]
   * @param framesAveraged how many frames are averaged for one pulse
   * @param trained whether the periodic error is taken out beforehand
   */
  public record Setting(double gain, double deadbandArcsec, int framesAveraged, boolean trained) {}

  private LoopReplay(MotionSplit split, Controller law, double factor, int samples) {
    this.split = split;
    this.law = law;
    this.factor = factor;
    this.samples = samples;
    this.noise = split.causes.get(MotionSplit.NOISE);
    this.disturbance = split.frames.offsetArcsec.clone();
    for (int i = 0; i < disturbance.length; i++) {
      disturbance[i] += factor * split.executedArcsec[i];
    }
  }

  /** A run that can be guided again; none when the loop is not known well enough. */
  public static Answer<LoopReplay> of(MotionSplit split, LoopFit fit) {
    if (!fit.describes()) {
      return Answer.none(
          String.format(
              Locale.ROOT,
              "the law that was fitted to the loop explains %.0f %% of its pulses, and %.0f %% are"
                  + " needed to play it again",
              100 * fit.explainedShare(),
              100 * LoopFit.FEWEST_EXPLAINED));
    }
    if (!(split.strength.mean() > 0)) {
      return Answer.none("what a second of pulse moves is not known");
    }
    LoopReplay replay = new LoopReplay(split, fit.law(), 1, split.frames.size());
    double logged = replay.loggedRmsArcsec();
    double repeated = ReplayedRun.loggedRmsArcsec(List.of(replay.run(replay.current())));
    if (Double.isNaN(repeated)) {
      return Answer.none("no frame of the run was usable");
    }
    return Math.abs(repeated - logged) <= REPEATS * logged
        ? Answer.of(replay)
        : Answer.none(
            String.format(
                Locale.ROOT,
                "played again, the present settings give an RMS of %.2f arcsec where the log has"
                    + " %.2f: something moves the star that the recovered motion lacks",
                repeated,
                logged));
  }

  /** The setting that the log was made with. */
  public Setting current() {
    return new Setting(
        law.millisPerArcsec() / 1000 * factor * split.strength.mean(),
        law.deadbandArcsec(),
        1,
        false);
  }

  /**
   * Part of the run as it would be if pulses pushed more strongly than was found, by so many
   * standard errors: the recovered motion is then another one, and the gain was higher.
   */
  public LoopReplay excerpt(double standardErrors) {
    return new LoopReplay(
        split,
        law,
        1 + standardErrors * split.strength.uncertainShare(),
        Math.min(samples, EXCERPT));
  }

  /** Whether there is a periodic error that could be trained out. */
  public boolean trainable() {
    for (double value : split.trainableArcsec) {
      if (value != 0) {
        return true;
      }
    }
    return false;
  }

  /** Standard deviation of the measurement noise of a frame [arcsec]. */
  public double noiseArcsec() {
    double sum = 0;
    for (int i = 0; i < noise.length; i++) {
      sum += noise[i] * noise[i] + split.levelVariance[i];
    }
    return noise.length == 0 ? 0 : Math.sqrt(sum / noise.length);
  }

  /** RMS of the log's own offsets over the used frames [arcsec]; 0 without any. */
  private double loggedRmsArcsec() {
    double sum = 0;
    double square = 0;
    int n = 0;
    for (int i = 0; i < disturbance.length; i++) {
      if (split.frames.used[i] && split.frames.listening[i]) {
        sum += split.frames.offsetArcsec[i];
        square += split.frames.offsetArcsec[i] * split.frames.offsetArcsec[i];
        n++;
      }
    }
    return n == 0 ? 0 : Math.sqrt(Math.max(0, square - sum * sum / n) / n);
  }

  /** Guides again. */
  public ReplayedRun run(Setting setting) {
    double strength = setting.gain() / (factor * split.strength.mean()) * 1000;
    GuidedFrames guided = split.frames;
    SettlingRule.Watch watch = guided.settlingRule.new Watch();
    Mount mount = new Mount();
    Controller.Course course = law.with(strength, setting.deadbandArcsec()).begin();
    ReplayedRun.Tally tally = new ReplayedRun.Tally(samples);
    double sum = 0;
    int counted = 0;
    int averaged = 0;
    for (int i = 0; i < samples; i++) {
      double trained = setting.trained() ? split.trainableArcsec[i] - split.trainableArcsec[0] : 0;
      double offset = disturbance[i] - trained - mount.correction(i);
      double radius = Math.hypot(offset, guided.besideArcsec[i]);
      boolean settled = watch.settled(guided.moved[i], guided.seconds[i], radius);
      if (settled && guided.steady[i] && guided.listening[i]) {
        tally.move(i, offset - noise[i], split.levelVariance[i]);
        counted++;
      }
      sum += offset;
      averaged++;
      if (averaged == setting.framesAveraged() || i == samples - 1) {
        tally.log(i, counted, sum / averaged);
        mount.push(course.next(sum / averaged) / 1000, i);
        sum = 0;
        averaged = 0;
        counted = 0;
      }
    }
    return tally.run();
  }

  /**
   * The axis under correction: what it loses, strength of pulses, and what of the last one has
   * acted.
   */
  private final class Mount {
    private final Drive drive = split.lost.times(factor).begin();
    private double before;
    private double last;
    private double leap;
    private double lastSent;
    private double lastSeconds;

    double correction(int i) {
      if (last == 0) {
        return before;
      }
      double exposure = split.frames.exposureSeconds;
      double begin = split.frames.seconds[i] - exposure / 2;
      return before
          + last * ExecutedPulses.share(lastSent, lastSeconds, begin, exposure)
          + leap * ExecutedPulses.step(lastSent, begin, exposure);
    }

    void push(double pulseSeconds, int i) {
      before += last + leap;
      double push = factor * split.strength.moved(pulseSeconds);
      double lost = drive.lost(push);
      last = push - Math.copySign(lost, push);
      leap = last == 0 ? 0 : Math.copySign(drive.leap(push), push);
      double speed = push == 0 ? 1 : push / pulseSeconds;
      lastSent = split.frames.seconds[i] + split.frames.exposureSeconds / 2 + lost / speed;
      lastSeconds = Math.abs(pulseSeconds) - lost / speed;
    }
  }
}
